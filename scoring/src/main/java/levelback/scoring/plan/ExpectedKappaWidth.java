package levelback.scoring.plan;

import java.util.SplittableRandom;
import java.util.stream.LongStream;
import levelback.scoring.proof.Proportions;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * How wide the interval of weighted kappa will be for a panel of so many clips and scorers, by simulation.
 *
 * <p>Model (own, common practice): clip c has a severity u ~ N(0, ρ), scorer s sees u + e with e ~ N(0, 1 − ρ), and both
 * scorers cut what they see at the quantiles that give the shares of the levels. ρ is the correlation of two scorers before
 * the cuts; quadratic kappa lies a little below it. Weights: linear or quadratic by the number of the level.
 *
 * <p>The figure is the mean of weighted kappa over the pairs of scorers; its variance is taken over clips from the mean
 * over pairs of (w_ij − (w̄_i. + w̄_.j)(1 − κ))/(1 − p_e), which for two scorers is the large-sample variance of Fleiss, Cohen
 * & Everitt (1969), Psychol Bull 72:323, doi:10.1037/h0028106.
 *
 * @param kappa mean over the panels simulated
 * @param width mean width of the interval
 * @param widthError Monte-Carlo standard error of that mean
 * @param panels panels that gave an interval; a panel in which a pair used one level only gives none
 */
public record ExpectedKappaWidth(double kappa, double width, double widthError, int panels) {

    private record Panel(double kappa, double width) {}

    /**
     * Simulates.
     *
     * @param clips at least 2
     * @param scorers at least 2
     * @param shares how the clips spread over the levels, at least two, each above 0; made to sum to 1
     * @param correlation ρ in [0, 1)
     * @param quadratic quadratic weights; else linear
     * @param level confidence level in (0, 1)
     * @param runs panels to simulate; 500 give the width to within a few per cent
     * @throws IllegalArgumentException if an argument is out of its range
     */
    public static ExpectedKappaWidth of(
            int clips,
            int scorers,
            double[] shares,
            double correlation,
            boolean quadratic,
            double level,
            int runs,
            long seed) {
        if (clips < 2 || scorers < 2 || shares.length < 2 || !(correlation >= 0 && correlation < 1) || runs < 2) {
            throw new IllegalArgumentException("clips " + clips + ", scorers " + scorers + ", levels " + shares.length
                    + ", correlation " + correlation + ", runs " + runs);
        }
        double[] cuts = cuts(shares);
        double z = Proportions.normalQuantile(level);
        double[] widths = new double[runs];
        double[] kappas = new double[runs];
        int n = 0;
        for (Panel panel : LongStream.range(0, runs)
                .parallel()
                .mapToObj(run -> panel(
                        new SplittableRandom(seed * 1_000_003 + run).split(),
                        clips,
                        scorers,
                        cuts,
                        correlation,
                        quadratic,
                        z))
                .toList()) {
            if (Double.isFinite(panel.width())) {
                widths[n] = panel.width();
                kappas[n++] = panel.kappa();
            }
        }
        double mean = mean(widths, n);
        double squares = 0;
        for (int i = 0; i < n; i++) {
            squares += (widths[i] - mean) * (widths[i] - mean);
        }
        return new ExpectedKappaWidth(mean(kappas, n), mean, Math.sqrt(squares / (n - 1.0) / n), n);
    }

    private static double[] cuts(double[] shares) {
        double sum = 0;
        for (double share : shares) {
            if (!(share > 0 && share < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException("a share of " + share);
            }
            sum += share;
        }
        double[] cuts = new double[shares.length - 1];
        double below = 0;
        for (int j = 0; j < cuts.length; j++) {
            below += shares[j] / sum;
            cuts[j] = NormalDistribution.of(0, 1).inverseCumulativeProbability(Math.min(1, below));
        }
        return cuts;
    }

    private static Panel panel(
            SplittableRandom random,
            int clips,
            int scorers,
            double[] cuts,
            double correlation,
            boolean quadratic,
            double z) {
        int[][] scores = new int[scorers][clips];
        NormalDistribution normal = NormalDistribution.of(0, 1);
        for (int c = 0; c < clips; c++) {
            double severity = Math.sqrt(correlation) * normal.inverseCumulativeProbability(open(random));
            for (int s = 0; s < scorers; s++) {
                double seen = severity + Math.sqrt(1 - correlation) * normal.inverseCumulativeProbability(open(random));
                int at = 0;
                while (at < cuts.length && seen > cuts[at]) {
                    at++;
                }
                scores[s][c] = at;
            }
        }
        double[] parts = new double[clips];
        double kappa = 0;
        double pairs = scorers * (scorers - 1) / 2.0;
        for (int a = 0; a < scorers; a++) {
            for (int b = a + 1; b < scorers; b++) {
                kappa += pair(scores[a], scores[b], cuts.length + 1, quadratic, parts) / pairs;
            }
        }
        double mean = mean(parts, clips);
        double squares = 0;
        for (double part : parts) {
            squares += (part - mean) * (part - mean);
        }
        return new Panel(kappa, 2 * z * Math.sqrt(squares) / clips / pairs);
    }

    /** Weighted kappa of a pair; adds each clip's part of it to {@code parts}. */
    static double pair(int[] a, int[] b, int levels, boolean quadratic, double[] parts) {
        double n = a.length;
        double[] shareA = new double[levels];
        double[] shareB = new double[levels];
        double observed = 0;
        for (int c = 0; c < a.length; c++) {
            shareA[a[c]] += 1 / n;
            shareB[b[c]] += 1 / n;
            observed += weight(a[c], b[c], levels, quadratic) / n;
        }
        double[] meanA = new double[levels];
        double[] meanB = new double[levels];
        double expected = 0;
        for (int i = 0; i < levels; i++) {
            for (int j = 0; j < levels; j++) {
                double w = weight(i, j, levels, quadratic);
                meanA[i] += w * shareB[j];
                meanB[j] += w * shareA[i];
                expected += w * shareA[i] * shareB[j];
            }
        }
        double kappa = (observed - expected) / (1 - expected);
        for (int c = 0; c < a.length; c++) {
            double w = weight(a[c], b[c], levels, quadratic);
            parts[c] += (w - (meanA[a[c]] + meanB[b[c]]) * (1 - kappa)) / (1 - expected);
        }
        return kappa;
    }

    private static double weight(int i, int j, int levels, boolean quadratic) {
        double off = Math.abs(i - j) / (levels - 1.0);
        return 1 - (quadratic ? off * off : off);
    }

    private static double open(SplittableRandom random) {
        return (random.nextLong() >>> 12) * 0x1.0p-52 + 0x1.0p-53;
    }

    private static double mean(double[] values, int n) {
        double sum = 0;
        for (int i = 0; i < n; i++) {
            sum += values[i];
        }
        return sum / n;
    }
}
