package levelback.player.cli;

import java.io.PrintWriter;
import java.util.Arrays;
import java.util.Objects;
import java.util.concurrent.Callable;
import levelback.player.work.Agree;
import levelback.player.work.BadInput;
import levelback.scoring.agreement.AgreementQuestion;
import levelback.store.exchange.TableSource;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Do scorers agree, with each other and with themselves? From a table of ratings. */
@Command(name = "agreement")
final class AgreementCommand implements Callable<Integer> {

    private static final int MOST_DRAWS = 1_000_000;

    @Parameters(
            paramLabel = "RATINGS",
            description = "scorer,clip,score[,cow][,session]; - reads standard input; an empty score is a missing cell")
    private String ratings = "";

    @Option(
            names = "--scale-levels",
            paramLabel = "LIST",
            description = "the levels of the scale, such as 0,1,2,3, where not every level occurs")
    private @Nullable String scaleLevels;

    @Option(
            names = "--level",
            paramLabel = "PERCENT",
            defaultValue = "95",
            description = "of the intervals; default: 95")
    private double level = 95;

    @Option(names = "--seed", paramLabel = "N", defaultValue = "1", description = "of the resamples; default: 1")
    private long seed = 1;

    @Option(
            names = "--resamples",
            paramLabel = "N",
            defaultValue = "2000",
            description = "for the figures without a published variance; 0 leaves their intervals out; default: 2000")
    private int resamples = 2000;

    @Option(names = "--no-latent", description = "leaves out the scorers' severity on the latent scale")
    private boolean noLatent;

    @Option(names = "--json", description = "one JSON document in place of the table")
    private boolean json;

    @Spec
    private @Nullable CommandSpec spec;

    @Override
    public Integer call() {
        double share = level > 1 ? level / 100 : level;
        if (!(share > 0 && share < 1)) {
            throw new BadInput("--level " + level + " is no level of confidence; give a percentage such as 95.");
        }
        if (resamples < 0 || resamples > MOST_DRAWS) {
            throw new BadInput("--resamples " + resamples + " is out of reach; give 0 to " + MOST_DRAWS + ".");
        }
        AgreementQuestion question = new AgreementQuestion(share, seed, resamples, !noLatent);
        PrintWriter out = Objects.requireNonNull(spec).commandLine().getOut();
        PrintWriter err = Objects.requireNonNull(spec).commandLine().getErr();
        Agree.FromTable answer = Agree.fromTable(TableSource.of(ratings, System.in), question, levels());
        answer.notes().forEach(err::println);
        if (json) {
            AgreementJson.write(out, answer.result());
        } else {
            AgreementText.write(out, answer.result(), share);
        }
        return 0;
    }

    private double[] levels() {
        String list = scaleLevels;
        if (list == null) {
            return new double[0];
        }
        try {
            double[] levels = Arrays.stream(list.split(",", -1))
                    .map(String::strip)
                    .mapToDouble(Double::parseDouble)
                    .toArray();
            if (Arrays.stream(levels).allMatch(Double::isFinite)
                    && Arrays.stream(levels).distinct().count() == levels.length) {
                return levels;
            }
        } catch (NumberFormatException notNumbers) {
            // The sentence below says it.
        }
        throw new BadInput("--scale-levels " + list + " is no scale; give different numbers such as 0,1,2,3.");
    }
}
