package levelback.scoring.identity;

import java.util.Arrays;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * The factor for pairs out of order, estimated from the data.
 *
 * <p>The weight of a matching is no density in the factor: a larger factor only adds. It becomes one when it is divided
 * by what the factor takes away from reads that scatter freely: with q_ik the chance that two passes are both read and in
 * the opposite order,
 *
 * <pre>
 * q_ik = (1-m)^2 · Phi(-(t_k - t_i) / (sigma · root 2)),   log Z(epsilon) = sum over pairs of log(1 - (1-epsilon)·q_ik)
 * </pre>
 *
 * (pairs taken as independent), and the factor with the greatest log-likelihood less log Z is kept, over a grid with half
 * the weight beforehand on 1: order says nothing. Own derivation, no source; that it restores calibration where nobody
 * overtakes is held by the simulation.
 */
final class InversionFit {

    private static final double[] GRID = {1, 0.4, 0.15, 0.05, 0.015, 0.003};

    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

    private InversionFit() {}

    static double of(AlignmentParameters with, double[] passes, double[] reads, int[] fixed) {
        double[] q = inversions(with, passes);
        if (Arrays.stream(q).sum() < 1) {
            return 1;
        }
        double best = Double.NEGATIVE_INFINITY;
        double kept = 1;
        for (double factor : GRID) {
            Alignment alignment = Alignment.of(passes, reads, with.withInversionFactor(factor), fixed, 6, 8);
            double logZ = 0;
            for (double pair : q) {
                logZ += Math.log1p(-(1 - factor) * pair);
            }
            double prior = factor == 1 ? Math.log(0.5) : Math.log(0.5 / (GRID.length - 1));
            double log = alignment.logEvidence() - logZ + prior;
            if (log > best) {
                best = log;
                kept = factor;
            }
        }
        return kept;
    }

    /** The chances of inversion of all pairs near enough to have one. */
    private static double[] inversions(AlignmentParameters with, double[] passes) {
        double both = (1 - with.miss()) * (1 - with.miss());
        double reach = 5 * with.sigmaS();
        double[] q = new double[8 * passes.length];
        int n = 0;
        for (int i = 0; i < passes.length; i++) {
            for (int k = i + 1; k < passes.length && k <= i + 8 && passes[k] - passes[i] < reach; k++) {
                double apart = (passes[k] - passes[i]) / (Math.sqrt(2) * with.sigmaS());
                q[n++] = both * NORMAL.survivalProbability(apart);
            }
        }
        return Arrays.copyOf(q, n);
    }
}
