package levelback.scoring.agreement;

import java.util.function.IntToDoubleFunction;
import levelback.scoring.value.Estimate;

/**
 * Agreeing pairs of scorers over all pairs of scorers on one clip. Pairs of one clip (or of one cow, where cows are known)
 * are not independent: ratio estimator with the variance between clusters, t on clusters − 1, on the logit scale.
 *
 * <p>Reference: Cochran 1977, Sampling Techniques, ch. 6 and 9; equal to {@code svyciprop(method = "logit")} of R's survey.
 */
final class PooledAgreement {

    private PooledAgreement() {}

    /**
     * @param cluster of each clip
     * @param agreeing pairs of scorers that agree on a clip
     * @param pairs all pairs of scorers on a clip
     */
    static Estimate of(
            int clips,
            int clusters,
            java.util.function.IntUnaryOperator cluster,
            IntToDoubleFunction agreeing,
            IntToDoubleFunction pairs,
            boolean byCow,
            double level) {
        String method =
                "ratio estimator, variance clustered by " + (byCow ? "cow" : "clip") + ", logit interval with t";
        double[] x = new double[clusters];
        double[] n = new double[clusters];
        double sumX = 0;
        double sumN = 0;
        for (int c = 0; c < clips; c++) {
            double of = pairs.applyAsDouble(c);
            double agreed = agreeing.applyAsDouble(c);
            x[cluster.applyAsInt(c)] += agreed;
            n[cluster.applyAsInt(c)] += of;
            sumX += agreed;
            sumN += of;
        }
        long units = Math.round(sumN);
        if (units == 0) {
            return Estimate.missing(0, method, "no clip has two scores");
        }
        int used = 0;
        double p = sumX / sumN;
        double squares = 0;
        for (int k = 0; k < clusters; k++) {
            if (n[k] > 0) {
                used++;
                squares += (x[k] - p * n[k]) * (x[k] - p * n[k]);
            }
        }
        if (sumX == 0 || sumX == sumN) {
            return Estimate.pointOnly(p, units, method, "all pairs alike: clips do not differ, no interval at 0 or 1");
        }
        if (used < 2) {
            return Estimate.pointOnly(
                    p, units, method, "one " + (byCow ? "cow" : "clip") + " says nothing of the spread");
        }
        double error = Math.sqrt(squares * used / (used - 1.0)) / sumN / (p * (1 - p));
        double half = Quantiles.t(level, used - 1) * error;
        double centre = Math.log(p / (1 - p));
        return Estimate.of(p, expit(centre - half), expit(centre + half), units, method);
    }

    private static double expit(double x) {
        return 1 / (1 + Math.exp(-x));
    }
}
