package levelback.scoring.proof;

import levelback.scoring.value.Estimate;

/**
 * Likelihood ratios and Youden's index with intervals clustered by cow, beside those that take the repeats of a cow as
 * independent.
 *
 * <p>What each cow adds to the figure (to the logarithm of a ratio) is summed over her rows before it is squared, with
 * C/(C-1) and t on one degree of freedom less than the smaller group of cows (Taylor linearisation: Särndal, Swensson &
 * Wretman 1992, Model Assisted Survey Sampling, 5.5).
 */
final class ByCow {

    private static final String LOG = "log method, variance clustered by cow, t";
    private static final String LINEAR = "linearised, variance clustered by cow, t";

    private final CutCounts at;
    private final double level;
    private final double sick;
    private final double sound;

    private ByCow(CutCounts at, double level) {
        this.at = at;
        this.level = level;
        this.sick = at.counts().tp() + at.counts().fn();
        this.sound = at.counts().fp() + at.counts().tn();
    }

    /** The three figures. */
    static ProofResult.ByCow of(CutCounts at, double level) {
        ByCow by = new ByCow(at, level);
        return new ProofResult.ByCow(by.ratio(true), by.ratio(false), by.youden());
    }

    private Estimate ratio(boolean positive) {
        TwoByTwo counts = at.counts();
        Estimate plain = positive ? counts.lrPositive(level, false) : counts.lrNegative(level, false);
        if (plain.value().isEmpty() || plain.interval().isEmpty()) {
            return new Estimate(plain.value(), plain.interval(), plain.n(), LOG, plain.why());
        }
        double value = plain.value().getAsDouble();
        double[] adds;
        if (positive) {
            // ln(tp/s) - ln(fp/h)
            adds = new double[] {1.0 / counts.tp(), -1.0 / counts.fp(), -1 / sick, 1 / sound};
        } else {
            // ln(fn/s) - ln(tn/h), fn = s - tp, tn = h - fp
            adds = new double[] {
                -1.0 / counts.fn(), 1.0 / counts.tn(), 1.0 / counts.fn() - 1 / sick, 1 / sound - 1.0 / counts.tn()
            };
        }
        double half = half(adds);
        if (Double.isNaN(half)) {
            return Estimate.pointOnly(value, plain.n(), LOG, RocArea.TWO_EACH);
        }
        return Estimate.of(value, value * Math.exp(-half), value * Math.exp(half), plain.n(), LOG);
    }

    private Estimate youden() {
        Estimate plain = at.counts().youden(level, false);
        if (plain.value().isEmpty()) {
            return Estimate.missing(plain.n(), LINEAR, plain.why().orElse(""));
        }
        double value = plain.value().getAsDouble();
        double sensitivity = at.counts().tp() / sick;
        double specificity = at.counts().tn() / sound;
        double half = half(new double[] {1 / sick, -1 / sound, -sensitivity / sick, (1 - specificity) / sound});
        if (Double.isNaN(half)) {
            return Estimate.pointOnly(value, plain.n(), LINEAR, RocArea.TWO_EACH);
        }
        if (half <= 0) {
            return TwoByTwo.squareAndAdd(
                    value,
                    Proportions.clustered(at.sensitivity(), level, ""),
                    Proportions.clustered(at.specificity(), level, ""),
                    plain.n(),
                    "square and add of the clustered intervals of both shares (Newcombe 1998)");
        }
        return Estimate.of(value, Math.max(-1, value - half), Math.min(1, value + half), plain.n(), LINEAR);
    }

    private double half(double[] adds) {
        double groups = Math.min(at.cowsWithLesion(), at.cowsClean());
        if (groups < 2) {
            return Double.NaN;
        }
        double variance = at.squares(adds) * at.cows() / (at.cows() - 1.0);
        return Proportions.tQuantile(level, groups - 1) * Math.sqrt(variance);
    }
}
