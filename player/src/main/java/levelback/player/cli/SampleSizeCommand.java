package levelback.player.cli;

import java.io.PrintWriter;
import java.util.Objects;
import java.util.concurrent.Callable;
import levelback.player.work.BadInput;
import levelback.scoring.plan.PrevalenceSampleSize;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** How many cows to score for a prevalence within a margin. */
@Command(name = "sample-size")
final class SampleSizeCommand implements Callable<Integer> {

    @Option(names = "--herd", paramLabel = "N", required = true, description = "cows in the herd")
    private long herd;

    @Option(
            names = "--margin",
            paramLabel = "POINTS",
            defaultValue = "10",
            description = "half the width of the interval, in percentage points; default: 10")
    private double margin = 10;

    @Option(
            names = "--expected",
            paramLabel = "PERCENT",
            defaultValue = "50",
            description = "prevalence expected; default: 50, which asks for most cows")
    private double expected = 50;

    @Option(
            names = "--level",
            paramLabel = "PERCENT",
            defaultValue = "95",
            description = "level of confidence; default: 95")
    private double level = 95;

    @Option(names = "--json", description = "one JSON document in place of the sentence")
    private boolean json;

    @Spec
    private @Nullable CommandSpec spec;

    @Override
    public Integer call() {
        if (herd < 1) {
            throw new BadInput("--herd " + herd + " is no herd; give the number of cows.");
        }
        if (!(margin > 0 && margin <= 100)) {
            throw new BadInput("--margin " + margin + " must be above 0 and at most 100 percentage points.");
        }
        if (!(expected >= 0 && expected <= 100)) {
            throw new BadInput("--expected " + expected + " must be a percentage from 0 to 100.");
        }
        double share = Percent.level(level);
        long cows = PrevalenceSampleSize.cows(herd, margin / 100, expected / 100, share);
        PrintWriter out = Objects.requireNonNull(spec).commandLine().getOut();
        if (json) {
            JsonOut.object(out, o -> {
                o.whole("cows", cows);
                o.whole("herd", herd);
                o.number("margin", margin);
                o.number("expected", expected);
                o.number("level", share);
            });
        } else {
            out.println("Score " + cows + " of the " + herd + " cows, drawn at random: the share of lame cows is then"
                    + " known to within " + plain(margin) + " points with " + plain(100 * share)
                    + " % confidence if it is about "
                    + plain(expected) + " %.");
        }
        return 0;
    }

    private static String plain(double number) {
        double rounded = Math.round(number * 1e6) / 1e6;
        return rounded == Math.rint(rounded) ? String.valueOf((long) rounded) : String.valueOf(rounded);
    }
}
