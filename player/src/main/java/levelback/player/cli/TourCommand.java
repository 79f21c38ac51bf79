package levelback.player.cli;

import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import levelback.player.shell.WritePictures;
import levelback.player.work.BadInput;
import levelback.player.work.UserFolder;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Renders every page of the desk to PNG files; needs no screen. */
@Command(name = "tour")
final class TourCommand implements Callable<Integer> {

    @Option(names = "--out", paramLabel = "DIR", required = true, description = "the folder for the pictures")
    private Path out = Path.of("");

    @Option(
            names = "--book",
            paramLabel = "FILE",
            description = "the book the pages are shown on. Default: the practice's own.")
    private @Nullable Path book;

    @Spec
    private @Nullable CommandSpec spec;

    @Override
    public Integer call() {
        Path shown = book != null ? book : UserFolder.ofThisUser().practiceBook();
        if (!Files.isRegularFile(shown)) {
            throw new BadInput("There is no book " + shown + "; name one with --book, or let levelback demo make one.");
        }
        PrintWriter to = java.util.Objects.requireNonNull(spec).commandLine().getOut();
        List<Path> files = new WritePictures(shown).write(out, to::println);
        to.println(files.size() + " pictures in " + out.toAbsolutePath().normalize());
        return 0;
    }
}
