package levelback.player.shell;

import java.nio.file.Path;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Function;
import javafx.application.Platform;
import javafx.geometry.Rectangle2D;
import javafx.scene.Scene;
import javafx.scene.input.DragEvent;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.TransferMode;
import javafx.stage.FileChooser;
import javafx.stage.Screen;
import javafx.stage.Stage;
import levelback.player.desk.Desk;
import levelback.player.desk.Page;
import levelback.player.desk.PageId;
import levelback.player.proof.ProofPage;
import levelback.player.score.ScorePage;
import levelback.player.theme.Theme;
import levelback.player.work.CannotBeDone;
import levelback.player.work.UserFolder;

/** The desk in its window; here everything is put together. */
public final class DeskWindow {

    private static final double WIDE = 1440;
    private static final double HIGH = 900;

    private DeskWindow() {}

    /** The pages that are built. */
    static Map<PageId, Function<Desk, Page>> pages() {
        Map<PageId, Function<Desk, Page>> pages = new EnumMap<>(PageId.class);
        pages.put(PageId.SCORE, ScorePage::new);
        pages.put(PageId.TRIM, levelback.player.trim.TrimPage::new);
        pages.put(PageId.PROOF, ProofPage::new);
        return pages;
    }

    /**
     * Opens the desk and returns when its window is closed and everything entered is on the disk.
     *
     * @param book the book to open; without one the book open last, or the practice's own, made if it is not there
     * @throws CannotBeDone with one sentence where there is no screen, or system libraries are missing
     */
    public static void open(Optional<Path> book) {
        if (!SystemLibraries.hasScreen(System.getenv()) && System.getProperty("glass.platform") == null) {
            throw new CannotBeDone(
                    "There is no screen to open the desk on (DISPLAY is not set); start it from a desktop"
                            + " session, or use the commands, such as demo or tour.");
        }
        Toolkit.start(true);
        UserFolder folder = UserFolder.ofThisUser();
        FailureLog.only(folder.log());
        Settings settings = Settings.load(folder.settings());
        CountDownLatch closed = new CountDownLatch(1);
        AtomicReference<Throwable> failed = new AtomicReference<>();
        Platform.runLater(() -> {
            try {
                show(new Stage(), book, folder, settings, closed::countDown);
            } catch (RuntimeException | Error e) {
                failed.set(e);
                closed.countDown();
            }
        });
        try {
            closed.await();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        if (failed.get() instanceof RuntimeException e) {
            throw e;
        }
        if (failed.get() instanceof Error e) {
            throw e;
        }
    }

    /** Shows the desk in a stage. On the JavaFX thread. */
    static DeskShell show(Stage stage, Optional<Path> book, UserFolder folder, Settings settings, Runnable closed) {
        DeskShell desk = new DeskShell(pages(), folder.settings(), settings, folder.log(), new StageWishes(stage));
        Rectangle2D screen = Screen.getPrimary().getVisualBounds();
        Scene scene = dress(desk, Math.min(WIDE, screen.getWidth()), Math.min(HIGH, screen.getHeight()));
        stage.setScene(scene);
        stage.setTitle(Words.of("window"));
        stage.setMinWidth(1024);
        stage.setMinHeight(640);
        stage.setOnHidden(e -> {
            // Closing waits for what was entered last; it must not hold up the JavaFX thread while the window goes.
            Thread closing = new Thread(
                    () -> {
                        desk.close();
                        closed.run();
                    },
                    "levelback-close");
            closing.start();
        });
        stage.show();
        if (book.isPresent()) {
            desk.openBook(book.get(), false);
        } else {
            Path last = settings.get(Settings.BOOK)
                    .map(Path::of)
                    .filter(java.nio.file.Files::isRegularFile)
                    .orElseGet(folder::practiceBook);
            desk.openBook(last, true);
        }
        return desk;
    }

    /** A scene with the desk in it: theme, keys, files dropped anywhere. */
    static Scene dress(DeskShell desk, double wide, double high) {
        Scene scene = new Scene(desk.root(), wide, high);
        Theme.apply(scene, desk.dark());
        DeskKeys keys = new DeskKeys(desk);
        scene.addEventFilter(KeyEvent.KEY_PRESSED, keys::filter);
        scene.setOnDragOver(DeskWindow::dragOver);
        scene.setOnDragDropped(e -> {
            e.setDropCompleted(e.getDragboard().hasFiles());
            desk.takeFiles(e.getDragboard().getFiles().stream()
                    .map(java.io.File::toPath)
                    .toList());
            e.consume();
        });
        return scene;
    }

    private static void dragOver(DragEvent event) {
        if (event.getDragboard().hasFiles()) {
            event.acceptTransferModes(TransferMode.COPY, TransferMode.LINK);
            event.consume();
        }
    }

    /** Asks in the system's own dialogs. */
    private record StageWishes(Stage stage) implements DeskWishes {

        private static final List<String> VIDEOS = List.of(
                "mp4", "mov", "m4v", "mkv", "webm", "avi", "ts", "mts", "m2ts", "mpg", "mpeg", "3gp", "h264", "hevc",
                "mjpeg", "flv", "asf", "wmv", "mxf");

        @Override
        public List<Path> recordings() {
            FileChooser chooser = chooser("chooser.recordings");
            List<String> patterns = VIDEOS.stream()
                    .flatMap(
                            ending -> java.util.stream.Stream.of("*." + ending, "*." + ending.toUpperCase(Locale.ROOT)))
                    .toList();
            chooser.getExtensionFilters()
                    .addAll(
                            new FileChooser.ExtensionFilter(Words.of("chooser.videos"), patterns),
                            new FileChooser.ExtensionFilter("*", "*"));
            List<java.io.File> chosen = chooser.showOpenMultipleDialog(stage);
            return chosen == null
                    ? List.of()
                    : chosen.stream().map(java.io.File::toPath).toList();
        }

        @Override
        public Optional<Path> cows() {
            FileChooser chooser = chooser("chooser.cows");
            chooser.getExtensionFilters()
                    .addAll(
                            new FileChooser.ExtensionFilter(
                                    Words.of("chooser.tables"), "*.csv", "*.CSV", "*.txt", "*.tsv"),
                            new FileChooser.ExtensionFilter("*", "*"));
            return Optional.ofNullable(chooser.showOpenDialog(stage)).map(java.io.File::toPath);
        }

        @Override
        public Optional<Path> book() {
            FileChooser chooser = chooser("chooser.open");
            chooser.getExtensionFilters()
                    .addAll(
                            new FileChooser.ExtensionFilter(Words.of("chooser.book"), "*.levelback"),
                            new FileChooser.ExtensionFilter("*", "*"));
            return Optional.ofNullable(chooser.showOpenDialog(stage)).map(java.io.File::toPath);
        }

        @Override
        public Optional<Path> newBook() {
            FileChooser chooser = chooser("chooser.new");
            chooser.setInitialFileName("herd.levelback");
            return Optional.ofNullable(chooser.showSaveDialog(stage)).map(java.io.File::toPath);
        }

        @Override
        public void fullScreen() {
            stage.setFullScreen(!stage.isFullScreen());
        }

        @Override
        public Optional<Demo> demo() {
            return Optional.of(new DemoHerd(UserFolder.ofThisUser().path().resolve("demo"))::open);
        }

        private static FileChooser chooser(String title) {
            FileChooser chooser = new FileChooser();
            chooser.setTitle(Words.of(title));
            return chooser;
        }
    }
}
