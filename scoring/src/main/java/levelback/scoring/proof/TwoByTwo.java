package levelback.scoring.proof;

import java.util.List;
import levelback.scoring.value.Estimate;

/**
 * Score against lesion among the lifted, with the figures that need the four counts together.
 *
 * <p>References: Simel, Samsa & Matchar (1991), Likelihood ratios with confidence, J Clin Epidemiol 44:763 (log method);
 * Youden (1950), Index for rating diagnostic tests, Cancer 3:32. No half is ever added to an empty cell.
 *
 * @param tp score at or above the cut, lesion
 * @param fp score at or above the cut, no lesion
 * @param fn score below the cut, lesion
 * @param tn score below the cut, no lesion
 */
public record TwoByTwo(long tp, long fp, long fn, long tn) {

    private static final String NO_LESION = "no lifted cow had a lesion of the set";
    private static final String ALL_LESION = "every lifted cow had a lesion of the set";

    /** All four together. */
    public long lifted() {
        return tp + fp + fn + tn;
    }

    /** How much likelier a lame score is in a cow with a lesion than in one without. */
    public Estimate lrPositive(double level, boolean repeated) {
        return ratio(
                tp, tp + fn, fp, fp + tn, level, "no cow without a lesion scored lame: the ratio has no end", repeated);
    }

    /** How much likelier a sound score is in a cow with a lesion than in one without. */
    public Estimate lrNegative(double level, boolean repeated) {
        return ratio(
                fn,
                tp + fn,
                tn,
                fp + tn,
                level,
                "no cow without a lesion scored sound: the ratio has no end",
                repeated);
    }

    /**
     * Sensitivity plus specificity less one; independent binomials, normal interval, which covers 88 % with a dozen
     * lesions ({@link Alternatives} has one that covers 95 %). Where both are none or all the normal interval has no
     * width, and the Wilson intervals of both are squared and added.
     */
    public Estimate youden(double level, boolean repeated) {
        String method = "normal interval" + independent(repeated);
        if (tp + fn == 0) {
            return Estimate.missing(lifted(), method, NO_LESION);
        }
        if (fp + tn == 0) {
            return Estimate.missing(lifted(), method, ALL_LESION);
        }
        double sensitivity = (double) tp / (tp + fn);
        double specificity = (double) tn / (fp + tn);
        double value = sensitivity + specificity - 1;
        double variance = sensitivity * (1 - sensitivity) / (tp + fn) + specificity * (1 - specificity) / (fp + tn);
        if (variance <= 0) {
            return squareAndAdd(
                    value,
                    Proportions.estimate(tp, tp + fn, level, ""),
                    Proportions.estimate(tn, fp + tn, level, ""),
                    lifted(),
                    "both shares are none or all: square and add of their Wilson intervals (Newcombe 1998)"
                            + independent(repeated));
        }
        double half = Proportions.normalQuantile(level) * Math.sqrt(variance);
        return Estimate.of(value, Math.max(-1, value - half), Math.min(1, value + half), lifted(), method);
    }

    /**
     * A sum of two independent shares less one, from the interval of each.
     *
     * <p>Reference: Newcombe (1998), Interval estimation for the difference between independent proportions, Stat Med
     * 17:873, method 10.
     */
    static Estimate squareAndAdd(double value, Estimate one, Estimate other, long n, String method) {
        double low = 0;
        double high = 0;
        for (Estimate share : List.of(one, other)) {
            if (share.interval().isEmpty()) {
                return Estimate.pointOnly(value, n, method, share.why().orElse(""));
            }
            double p = share.value().orElseThrow();
            low += Math.pow(p - share.interval().get().low(), 2);
            high += Math.pow(share.interval().get().high() - p, 2);
        }
        return Estimate.of(
                value, Math.max(-1, value - Math.sqrt(low)), Math.min(1, value + Math.sqrt(high)), n, method);
    }

    private Estimate ratio(long a, long na, long b, long nb, double level, String noEnd, boolean repeated) {
        String method = "log method" + independent(repeated);
        if (na == 0) {
            return Estimate.missing(lifted(), method, NO_LESION);
        }
        if (nb == 0) {
            return Estimate.missing(lifted(), method, ALL_LESION);
        }
        if (b == 0) {
            return Estimate.missing(lifted(), method, noEnd);
        }
        double value = ((double) a / na) / ((double) b / nb);
        if (a == 0) {
            return Estimate.pointOnly(value, lifted(), method, "a count of 0 gives no interval by the log method");
        }
        double half = Proportions.normalQuantile(level) * Math.sqrt(1.0 / a - 1.0 / na + 1.0 / b - 1.0 / nb);
        return Estimate.of(value, value * Math.exp(-half), value * Math.exp(half), lifted(), method);
    }

    private static String independent(boolean repeated) {
        return repeated ? ", repeats of a cow taken as independent" : "";
    }
}
