package levelback.player.cli;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import levelback.player.shell.DeskWindow;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Opens the desk and ends when its window is closed. */
@Command(name = "open")
final class OpenCommand implements Callable<Integer> {

    @Option(
            names = "--book",
            paramLabel = "FILE",
            description = "the book to open; one that is not there is asked about. Default: the book open last.")
    private @Nullable Path book;

    @Override
    public Integer call() {
        DeskWindow.open(Optional.ofNullable(book));
        return 0;
    }
}
