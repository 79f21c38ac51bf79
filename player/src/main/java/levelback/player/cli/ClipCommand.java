package levelback.player.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import levelback.clips.open.Clip;
import levelback.clips.open.ClipException;
import levelback.clips.write.CutClip;
import levelback.clips.write.Overlay;
import levelback.player.film.Labels;
import levelback.player.work.BadInput;
import levelback.player.work.OpenRecording;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code clip}: a span of a recording as a film of its own. */
@Command(
        name = "clip",
        description = "Writes a span of a video file as H.264 in MP4, frame for frame, each shown for as long as in the"
                + " recording; upright, square pixels, without sound.")
final class ClipCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "FILE", description = "a video file; one that begins with - is given as ./-name")
    private Path file;

    @Option(
            names = "--from",
            paramLabel = "SECONDS",
            required = true,
            description = "begins with the frame on show so many seconds after frame 0")
    private double from;

    @Option(
            names = "--to",
            paramLabel = "SECONDS",
            required = true,
            description = "ends with the last frame that starts before so many seconds after frame 0")
    private double to;

    @Option(names = "--out", paramLabel = "FILE", required = true, description = "the MP4 file to write")
    private Path out;

    @Option(names = "--burn", paramLabel = "TEXT", description = "a line of text on every picture; may be repeated")
    private List<String> burn = List.of();

    @Option(names = "--burn-time", description = "minutes and seconds since frame 0 on every picture")
    private boolean burnTime;

    @Override
    public Integer call() throws ClipException, IOException {
        requireSpan();
        Outputs.requireOther(out, file, "the MP4 file");
        TerminalProgress progress = new TerminalProgress(spec.commandLine().getErr());
        try {
            Clip clip = OpenRecording.once(file, () -> false);
            int width = clip.facts().uprightWidth();
            int height = clip.facts().uprightHeight();
            Overlay overlay = burn.isEmpty() && !burnTime ? Overlay.NONE : new Labels(burn, burnTime, width, height);
            String name = Sentences.onOneLine(String.valueOf(out.getFileName()));
            CutClip.Cut cut = CutClip.write(clip, from, to, overlay, out, done -> progress.at(name, done), () -> false);
            progress.clear();
            spec.commandLine()
                    .getOut()
                    .printf(
                            Locale.ROOT,
                            "frames %d to %d of %s, %.3f s, %d x %d, in %s%n",
                            cut.firstFrame(),
                            cut.firstFrame() + cut.frames() - 1,
                            Sentences.onOneLine(file.toString()),
                            cut.durationUs() / 1e6,
                            cut.width(),
                            cut.height(),
                            Sentences.onOneLine(out.toString()));
            return 0;
        } finally {
            progress.clear();
        }
    }

    private void requireSpan() {
        if (!Double.isFinite(from) || !Double.isFinite(to)) {
            throw new BadInput("--from and --to take numbers of seconds, not " + from + " and " + to + ".");
        }
        if (!(from < to)) {
            throw new BadInput("--to must be later than --from, and " + to + " is not later than " + from + ".");
        }
        if (to <= 0) {
            throw new BadInput("--to must be above 0, since frame 0 is at 0 s, and it is " + to + ".");
        }
    }
}
