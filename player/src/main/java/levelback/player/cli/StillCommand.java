package levelback.player.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import levelback.clips.decode.Field;
import levelback.clips.open.Clip;
import levelback.clips.open.ClipException;
import levelback.clips.write.Still;
import levelback.player.work.BadInput;
import levelback.player.work.OpenRecording;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code still}: one frame as PNG. */
@Command(name = "still", description = "Writes one frame as PNG: upright, square pixels, the colours of the stream.")
final class StillCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "FILE", description = "a video file; one that begins with - is given as ./-name")
    private Path file;

    /** Which frame. */
    static final class Which {
        @Option(names = "--frame", paramLabel = "N", required = true, description = "its number, from 0")
        private @Nullable Integer frame;

        @Option(
                names = "--at",
                paramLabel = "SECONDS",
                required = true,
                description = "the frame on show so many seconds after frame 0")
        private @Nullable Double at;
    }

    @ArgGroup(multiplicity = "1")
    private Which which = new Which();

    @Option(
            names = "--field",
            paramLabel = "top|bottom",
            description = "one field of an interlaced frame: its lines 0, 2, 4 ... or 1, 3, 5 ...")
    private @Nullable String field;

    @Option(names = "--out", paramLabel = "PNG", required = true, description = "the picture to write")
    private Path out;

    @Override
    public Integer call() throws ClipException, IOException {
        if (which.at != null && !Double.isFinite(which.at)) {
            throw new BadInput("--at takes a number of seconds, not " + which.at + ".");
        }
        if (which.frame != null && which.frame < 0) {
            throw new BadInput("--frame takes a number from 0 on, not " + which.frame + ".");
        }
        Optional<Field> wanted = field();
        Outputs.requireOther(out, file, "the PNG file");
        Clip clip = OpenRecording.once(file, () -> false);
        int frame = which.frame != null ? which.frame : Still.frameAt(clip, which.at == null ? 0 : which.at);
        Still.write(clip, frame, wanted, out);
        String which = wanted.isEmpty()
                ? ""
                : String.format(
                        Locale.ROOT,
                        ", its %s field at %.6f s",
                        field,
                        (Still.fieldTimeUs(clip, frame, wanted.get()) - startUs(clip)) / 1e6);
        spec.commandLine()
                .getOut()
                .printf(
                        "frame %d%s of %s, %d x %d, in %s%n",
                        frame,
                        which,
                        Sentences.onOneLine(file.toString()),
                        clip.facts().uprightWidth(),
                        clip.facts().uprightHeight(),
                        Sentences.onOneLine(out.toString()));
        return 0;
    }

    private static long startUs(Clip clip) {
        return clip.facts().startUs().orElse(0);
    }

    private Optional<Field> field() {
        if (field == null) {
            return Optional.empty();
        }
        return switch (field) {
            case "top" -> Optional.of(Field.TOP);
            case "bottom" -> Optional.of(Field.BOTTOM);
            default -> throw new BadInput("--field takes top or bottom, not " + Sentences.onOneLine(field) + ".");
        };
    }
}
