package levelback.player.cli;

import java.io.PrintWriter;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import levelback.player.work.BadInput;
import levelback.player.work.MeasureGait;
import levelback.scoring.gait.GaitQuestion;
import levelback.store.exchange.TableSource;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Gait measures of one pass from her footfalls and marks. */
@Command(name = "gait")
final class GaitCommand implements Callable<Integer> {

    @Option(
            names = "--footfalls",
            paramLabel = "FILE",
            required = true,
            description =
                    "time_s,leg,event[,x_m,y_m][,pass]; leg LF RF LH RH, event down or up; - reads standard input")
    private @Nullable String footfalls;

    @Option(
            names = "--marks",
            paramLabel = "FILE",
            description = "time_s,point,x_m,y_m[,pass]; points poll withers back loin hook tailhead; - reads standard"
                    + " input")
    private @Nullable String marks;

    @Option(names = "--pass", paramLabel = "NAME", description = "which pass, where the tables hold several")
    private @Nullable String pass;

    @Option(
            names = "--frame-rate",
            paramLabel = "HZ",
            description = "frames per second the times were read from; puts the frame's own uncertainty into the"
                    + " intervals")
    private @Nullable Double frameRate;

    @Option(
            names = "--digitising-m",
            paramLabel = "METRES",
            description = "standard uncertainty of a print's x_m, each print by itself")
    private @Nullable Double digitising;

    @Option(
            names = "--level",
            paramLabel = "PERCENT",
            defaultValue = "95",
            description = "of the intervals; default: 95")
    private double level = 95;

    @Option(names = "--json", description = "one JSON document in place of the table")
    private boolean json;

    @Spec
    private @Nullable CommandSpec spec;

    @Override
    public Integer call() {
        GaitQuestion question = question();
        String falls = Objects.requireNonNull(footfalls);
        if (falls.equals("-") && "-".equals(marks)) {
            throw new BadInput("Only one of --footfalls and --marks can be read from standard input; name a file.");
        }
        PrintWriter out = Objects.requireNonNull(spec).commandLine().getOut();
        PrintWriter err = Objects.requireNonNull(spec).commandLine().getErr();
        MeasureGait.FromTables answer = MeasureGait.fromTables(
                TableSource.of(falls, System.in),
                Optional.ofNullable(marks).map(m -> TableSource.of(m, System.in)),
                Optional.ofNullable(pass),
                question);
        answer.notes().forEach(err::println);
        if (json) {
            GaitJson.write(out, answer.result());
        } else {
            GaitTable.write(out, answer.result());
        }
        return 0;
    }

    private GaitQuestion question() {
        double share = level > 1 ? level / 100 : level;
        if (!(share > 0 && share < 1)) {
            throw new BadInput("--level " + level + " is no level of confidence; give a percentage such as 95.");
        }
        if (frameRate != null && !(frameRate > 0 && frameRate < 1e6)) {
            throw new BadInput("--frame-rate " + frameRate + " is no frame rate; give frames per second such as 25.");
        }
        if (digitising != null && !(digitising >= 0 && digitising < 1000)) {
            throw new BadInput("--digitising-m " + digitising + " is no uncertainty; give metres such as 0.01.");
        }
        return new GaitQuestion(optional(frameRate), optional(digitising), Optional.empty(), share);
    }

    private static OptionalDouble optional(@Nullable Double value) {
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }
}
