package levelback.scoring.severity;

import java.util.ArrayList;
import java.util.List;
import levelback.scoring.value.Estimate;
import org.apache.commons.statistics.distribution.TDistribution;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.DecompositionSolver;
import org.hipparchus.linear.RealMatrix;

/**
 * The scorer's effect in the additive model {@code score = clip + scorer + error}, fitted by least squares, effects
 * summing to zero; in steps of the scale, positive: she scores higher than the panel. With complete data it is her mean
 * minus the grand mean.
 *
 * <p>The clips are absorbed: with {@code N} the scores of each scorer on the diagonal, {@code M} the clips by scorers
 * table of who scored what and {@code R} the scores of each clip, the scorers' effects solve {@code (N − M'R⁻¹M) b = M'(y − ȳ of
 * the clip)}, one equation for each scorer however many the clips. A clip with one score says nothing and drops out.
 *
 * <p>Interval: t with {@code scores − clips − scorers + 1} degrees of freedom, clips with at least two scores. It
 * takes the error to be the same for all scorers. {@code n}: clips that she and at least one other scored.
 *
 * <p>Special cases: one scorer, scorers that no shared clip joins: no value. No degrees of freedom left: no interval.
 * Perfect agreement: 0, from 0 to 0.
 *
 * <p>Source: two-way classification without interaction, unequal numbers (Searle, Linear Models, 1971, ch. 7, from
 * memory). Agrees with {@code lm(score ~ clip + scorer)} of R with sum contrasts.
 */
public final class AdditiveShift {

    /** How it was made, for a reader. */
    static final String METHOD = "least squares on clip and scorer, effects summing to zero; t interval";

    private AdditiveShift() {}

    /**
     * The shift of every scorer, in the panel's order.
     *
     * @param confidence of the interval, such as 0.95
     */
    public static List<Estimate> of(Panel panel, double confidence) {
        int k = panel.scorers().size();
        int[] starts = panel.clipStarts();
        int[] order = panel.byClip();
        long[] n = sharedClips(panel, starts, order);
        if (k < 2) {
            return missing(k, n, "One scorer alone: there is no panel to compare with.");
        }
        List<String> apart = panel.apartFromFirst();
        if (!apart.isEmpty()) {
            return missing(
                    k,
                    n,
                    "No shared clip joins " + panel.scorers().get(0) + " with " + String.join(", ", apart)
                            + ": let them score some of the same clips.");
        }
        double[][] system = new double[k][k];
        double[] right = new double[k];
        double[] mean = new double[panel.clips()];
        long used = 0;
        int usedClips = 0;
        for (int c = 0; c < panel.clips(); c++) {
            int size = starts[c + 1] - starts[c];
            if (size < 2) {
                continue;
            }
            used += size;
            usedClips++;
            mean[c] = absorb(panel, order, starts[c], starts[c + 1], system, right);
        }
        // The system has the ones as its only null vector; 11'/k in it makes the solution the one that sums to zero.
        RealMatrix filled = new Array2DRowRealMatrix(k, k);
        for (int a = 0; a < k; a++) {
            for (int b = 0; b < k; b++) {
                filled.setEntry(a, b, system[a][b] + 1.0 / k);
            }
        }
        DecompositionSolver solver = new CholeskyDecomposition(filled, 1e-9, 1e-12).getSolver();
        double[] shift = solver.solve(new ArrayRealVector(right, false)).toArray();
        double squares = residualSquares(panel, starts, order, mean, shift);
        RealMatrix inverse = solver.getInverse();
        long freedom = used - usedClips - (k - 1);
        List<Estimate> shifts = new ArrayList<>();
        for (int s = 0; s < k; s++) {
            // Rounding of a mean over many scores is no shift.
            double value = Math.abs(shift[s]) < 1e-13 ? 0 : shift[s];
            if (freedom < 1) {
                shifts.add(Estimate.pointOnly(
                        value, n[s], METHOD, "As many effects as scores: nothing is left to tell the error from."));
                continue;
            }
            double variance = squares / (double) freedom * (inverse.getEntry(s, s) - 1.0 / k);
            double half = Math.sqrt(Math.max(0, variance))
                    * TDistribution.of((double) freedom).inverseSurvivalProbability((1 - confidence) / 2);
            shifts.add(Estimate.of(value, value - half, value + half, n[s], METHOD));
        }
        return shifts;
    }

    /** Adds one clip to the system; returns its mean. */
    private static double absorb(Panel panel, int[] order, int from, int to, double[][] system, double[] right) {
        double sum = 0;
        for (int i = from; i < to; i++) {
            sum += panel.value(order[i]);
        }
        int size = to - from;
        double mean = sum / size;
        for (int i = from; i < to; i++) {
            int s = panel.scorer(order[i]);
            right[s] += panel.value(order[i]) - mean;
            system[s][s] += 1;
            for (int j = from; j < to; j++) {
                system[s][panel.scorer(order[j])] -= 1.0 / size;
            }
        }
        return mean;
    }

    private static double residualSquares(Panel panel, int[] starts, int[] order, double[] mean, double[] shift) {
        double squares = 0;
        for (int c = 0; c < panel.clips(); c++) {
            int size = starts[c + 1] - starts[c];
            if (size < 2) {
                continue;
            }
            double meanShift = 0;
            for (int i = starts[c]; i < starts[c + 1]; i++) {
                meanShift += shift[panel.scorer(order[i])] / size;
            }
            for (int i = starts[c]; i < starts[c + 1]; i++) {
                double residual = panel.value(order[i]) - mean[c] - (shift[panel.scorer(order[i])] - meanShift);
                // A residual below the rounding of the scores themselves is none.
                squares += Math.abs(residual) < 1e-12 ? 0 : residual * residual;
            }
        }
        return squares;
    }

    private static long[] sharedClips(Panel panel, int[] starts, int[] order) {
        long[] n = new long[panel.scorers().size()];
        for (int c = 0; c < panel.clips(); c++) {
            for (int i = starts[c]; i < starts[c + 1] && starts[c + 1] - starts[c] > 1; i++) {
                n[panel.scorer(order[i])]++;
            }
        }
        return n;
    }

    private static List<Estimate> missing(int scorers, long[] n, String why) {
        List<Estimate> none = new ArrayList<>();
        for (int s = 0; s < scorers; s++) {
            none.add(Estimate.missing(n[s], METHOD, why));
        }
        return none;
    }
}
