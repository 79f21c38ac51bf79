package levelback.player.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import levelback.clips.open.Clip;
import levelback.clips.open.ClipException;
import levelback.clips.write.CutClip;
import levelback.clips.write.Overlay;
import levelback.player.film.FootStrip;
import levelback.player.film.Labels;
import levelback.player.work.BadInput;
import levelback.player.work.OpenRecording;
import levelback.scoring.gait.Footfall;
import levelback.store.exchange.FootfallTable;
import levelback.store.exchange.TableSource;
import org.jspecify.annotations.Nullable;
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

    @Option(
            names = "--strip",
            paramLabel = "FOOTFALLS",
            description = "a table time_s,leg,event (seconds on the recording's clock): a line of stances for each leg"
                    + " along the foot of every picture")
    private @Nullable String strip;

    @Override
    public Integer call() throws ClipException, IOException {
        requireSpan();
        Outputs.requireOther(out, file, "the MP4 file");
        List<Footfall> footfalls = strip == null
                ? List.of()
                : FootfallTable.read(TableSource.of(strip, System.in), Optional.empty())
                        .footfalls();
        TerminalProgress progress = new TerminalProgress(spec.commandLine().getErr());
        try {
            Clip clip = OpenRecording.once(file, () -> false);
            Overlay overlay = overlay(clip, footfalls);
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

    private Overlay overlay(Clip clip, List<Footfall> footfalls) {
        int width = clip.facts().uprightWidth();
        int height = clip.facts().uprightHeight();
        List<Overlay> all = new ArrayList<>();
        if (strip != null) {
            double startS = clip.facts().startUs().orElse(0) / 1e6;
            double endS = clip.facts().durationUs().orElse(0) / 1e6;
            List<Footfall> sinceFrame0 = footfalls.stream()
                    .map(f -> new Footfall(f.timeS() - startS, f.leg(), f.event(), f.xM(), f.yM()))
                    .toList();
            all.add(new FootStrip(sinceFrame0, Math.max(0, from), Math.min(to, endS), width, height));
        }
        if (!burn.isEmpty() || burnTime) {
            all.add(new Labels(burn, burnTime, width, height));
        }
        return (frame, afterUs) ->
                all.stream().flatMap(one -> one.over(frame, afterUs).stream()).toList();
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
