package levelback.player.shell;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** What the desk asks of the window it is in. */
interface DeskWishes {
    /** Asks for video files; empty when none were chosen. */
    List<Path> recordings();

    /** Asks for a table of cows. */
    Optional<Path> cows();

    /** Asks for a book to open. */
    Optional<Path> book();

    /** Asks where a new book is kept. */
    Optional<Path> newBook();

    /** Goes into or out of full screen. */
    void fullScreen();

    /** How the demo herd is opened, where that is possible. */
    Optional<Demo> demo();

    /** Draws the demo herd and opens it. */
    interface Demo {
        void open(DeskShell desk);
    }

    /** A desk without a window: nothing can be asked for. */
    DeskWishes NONE = new DeskWishes() {
        @Override
        public List<Path> recordings() {
            return List.of();
        }

        @Override
        public Optional<Path> cows() {
            return Optional.empty();
        }

        @Override
        public Optional<Path> book() {
            return Optional.empty();
        }

        @Override
        public Optional<Path> newBook() {
            return Optional.empty();
        }

        @Override
        public void fullScreen() {}

        @Override
        public Optional<Demo> demo() {
            return Optional.empty();
        }
    };
}
