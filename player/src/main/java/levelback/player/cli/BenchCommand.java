package levelback.player.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Objects;
import java.util.concurrent.Callable;
import levelback.clips.bench.Spread;
import levelback.clips.bench.StepBench;
import levelback.clips.bench.StepResult;
import levelback.clips.open.ClipException;
import levelback.player.work.OpenRecording;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code bench}: how fast this machine steps through a file. */
@Command(
        name = "bench",
        description = {
            "Says how fast this machine steps through a video file: decoding in sequence, finding its packets, a steady walk"
                    + " forwards and back (a step every 40 ms, decoding ahead in between), frames at random, and playing"
                    + " its first 10 s at their own times. Every step, seek and played picture is timed from the wish"
                    + " until it stands converted for the screen (BGRA) in a buffer; drawing on the screen is not in it."
        })
final class BenchCommand implements Callable<Integer> {

    @Spec
    private @Nullable CommandSpec spec;

    @Parameters(paramLabel = "FILE", description = "a video file; one that begins with - is given as ./-name")
    private Path file = Path.of("");

    @Option(names = "--json", description = "prints one JSON document")
    private boolean json;

    @Override
    public Integer call() throws ClipException {
        PrintWriter out = Objects.requireNonNull(spec).commandLine().getOut();
        TerminalProgress progress =
                new TerminalProgress(Objects.requireNonNull(spec).commandLine().getErr());
        StepResult result;
        OpenRecording.once(file, () -> false); // a file never seen before is looked at by another process first
        try {
            result = new StepBench(file, () -> false, progress::at).run();
        } finally {
            progress.clear();
        }
        if (json) {
            JsonOut.object(out, document -> write(document, result));
        } else {
            out.print(table(result));
        }
        return 0;
    }

    private static void write(JsonOut json, StepResult result) throws IOException {
        json.number("decodeFps", result.decodeFps());
        json.number("indexMs", result.indexMs());
        spread(json, "stepForwardMs", result.stepForwardMs());
        spread(json, "stepBackMs", result.stepBackMs());
        spread(json, "seekMs", result.seekMs());
        json.number("frameDecodeMs", result.frameDecodeMs());
        json.whole("playDropped", result.playDropped());
        json.number("peakMemoryMb", result.peakMemoryMb());
    }

    private static void spread(JsonOut json, String key, Spread spread) throws IOException {
        json.object(key, inner -> {
            inner.number("p50", spread.p50());
            inner.number("p95", spread.p95());
            inner.number("max", spread.max());
        });
    }

    private String table(StepResult result) {
        StringBuilder text = new StringBuilder();
        text.append(Sentences.onOneLine(file.toString())).append(System.lineSeparator());
        line(text, "one frame in sequence", "%.2f ms (%.0f a second)", result.frameDecodeMs(), result.decodeFps());
        line(text, "finding all packets", "%.1f ms", result.indexMs());
        spread(text, "step forwards", result.stepForwardMs());
        spread(text, "step back", result.stepBackMs());
        spread(text, "a frame at random", result.seekMs());
        line(text, "played at its own pace", "%d of %d pictures late", result.playDropped(), result.played());
        line(text, "most memory", "%.0f MB", result.peakMemoryMb());
        return text.toString();
    }

    private static void spread(StringBuilder text, String what, Spread spread) {
        line(
                text,
                what,
                "half within %.1f ms, 95 of 100 within %.1f ms, the slowest %.1f ms",
                spread.p50(),
                spread.p95(),
                spread.max());
    }

    private static void line(StringBuilder text, String what, String form, Object... values) {
        text.append(String.format("%-24s", what))
                .append(String.format(Locale.ROOT, form, values))
                .append(System.lineSeparator());
    }
}
