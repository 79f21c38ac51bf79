package levelback.scoring.proof;

import java.util.OptionalDouble;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;

/**
 * Whether two scorers are right equally often on the same observations.
 *
 * <p>With d the pairs of one cow that only a was right on less those that only b was: {@code (Σ d)² / Σ d²} on one degree
 * of freedom, which is McNemar's {@code (b-c)²/(b+c)} where no cow repeats. Exact: were both alike, each cow's d could as
 * well have had the other sign, so the chance of a sum as far from 0 comes from all choices of signs; where no cow
 * repeats this is the binomial test of the discordant pairs. Mid-p takes half of the chance of what was seen.
 *
 * <p>References: McNemar (1947), Psychometrika 12:153, doi:10.1007/BF02295996; Fagerland, Lydersen & Laake (2013), The
 * McNemar test for binary matched-pairs data: mid-p and asymptotic are better than exact conditional, BMC Med Res Methodol
 * 13:91, doi:10.1186/1471-2288-13-91; for clusters after Obuchowski (1998), On the comparison of correlated proportions for
 * clustered data, Stat Med 17:1495. Agrees with R's {@code mcnemar.test(correct = FALSE)} and {@code binom.test}.
 */
final class McNemarTest {

    private static final String PLAIN = "McNemar without continuity correction; exact and mid-p binomial";
    private static final String CLUSTERED =
            "McNemar over sums of discordant pairs by cow, clustered by cow; exact and mid-p over all signs of the cows";

    /** Above so many steps of the convolution the normal form is as good. */
    private static final long MOST_STEPS = 50_000_000;

    private McNemarTest() {}

    /**
     * The test.
     *
     * @param differences for each cow, pairs that only a was right on less pairs that only b was
     * @param aOnly pairs only a was right on
     * @param bOnly pairs only b was right on
     * @param clustered whether cows repeat
     */
    static ProofComparison.Test of(int[] differences, long aOnly, long bOnly, boolean clustered) {
        String method = clustered ? CLUSTERED : PLAIN;
        double sum = 0;
        double squares = 0;
        long reach = 0;
        long cows = 0;
        for (int d : differences) {
            sum += d;
            squares += (double) d * d;
            reach += Math.abs(d);
            cows += d != 0 ? 1 : 0;
        }
        if (squares <= 0) {
            return new ProofComparison.Test(
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    OptionalDouble.of(1),
                    OptionalDouble.of(1),
                    method,
                    aOnly + bOnly == 0
                            ? "both are right on the same observations: no discordant pair"
                            : "within every cow the discordant pairs are even");
        }
        double statistic = sum * sum / squares;
        double[] exact;
        String why = "";
        if (reach == cows) {
            exact = binomial(Math.round((reach - Math.abs(sum)) / 2), reach);
        } else if (reach * cows <= MOST_STEPS) {
            exact = allSigns(differences, (int) reach, (int) Math.round(Math.abs(sum)));
        } else {
            exact = new double[0];
            why = "too many cows for the exact test: the statistic is as good";
        }
        return new ProofComparison.Test(
                OptionalDouble.of(statistic),
                OptionalDouble.of(ChiSquaredDistribution.of(1).survivalProbability(statistic)),
                exact.length == 0 ? OptionalDouble.empty() : OptionalDouble.of(exact[0]),
                exact.length == 0 ? OptionalDouble.empty() : OptionalDouble.of(exact[1]),
                method,
                why);
    }

    private static double[] binomial(long fewer, long of) {
        BinomialDistribution fair = BinomialDistribution.of(Math.toIntExact(of), 0.5);
        int x = Math.toIntExact(fewer);
        double seen = fair.probability(x);
        double exact = Math.min(1, 2 * fair.cumulativeProbability(x));
        // At an even split all other outcomes are further out, and the one seen counts once.
        double mid = 2 * fewer == of ? 1 - seen / 2 : exact - seen;
        return new double[] {exact, Math.min(1, mid)};
    }

    /** Chance of a sum at least as far from 0, and the same with half of those as far as what was seen. */
    private static double[] allSigns(int[] differences, int reach, int seen) {
        double[] chance = new double[2 * reach + 1];
        chance[reach] = 1;
        int now = 0;
        for (int d : differences) {
            int size = Math.abs(d);
            if (size > 0) {
                double[] next = new double[chance.length];
                for (int at = reach - now; at <= reach + now; at++) {
                    next[at - size] += chance[at] / 2;
                    next[at + size] += chance[at] / 2;
                }
                chance = next;
                now += size;
            }
        }
        double further = 0;
        double same = 0;
        for (int at = 0; at < chance.length; at++) {
            int distance = Math.abs(at - reach);
            further += distance > seen ? chance[at] : 0;
            same += distance == seen ? chance[at] : 0;
        }
        return new double[] {Math.min(1, further + same), Math.min(1, further + same / 2)};
    }
}
