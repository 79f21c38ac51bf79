package levelback.scoring.proof;

import levelback.scoring.value.Estimate;

/**
 * Figures of the lifted with intervals that cover better than those of the definitions where cows repeat or are few.
 *
 * <p>Likelihood ratios: where cows repeat, what each cow adds to the logarithm of the ratio is summed over her rows before
 * it is squared, with C/(C-1) and t on one degree of freedom less than the smaller group of cows (Taylor linearisation:
 * Särndal, Swensson & Wretman 1992, Model Assisted Survey Sampling, 5.5). Youden's index: the intervals of both shares
 * squared and added (Newcombe 1998, Stat Med 17:873). Area: DeLong's or Obuchowski's variance on the logit, with t.
 */
final class Alternatives {

    private static final String LOG = "log method, variance clustered by cow, t";

    private final CutCounts at;
    private final double level;
    private final double sick;
    private final double sound;

    private Alternatives(CutCounts at, double level) {
        this.at = at;
        this.level = level;
        this.sick = at.counts().tp() + at.counts().fn();
        this.sound = at.counts().fp() + at.counts().tn();
    }

    /**
     * The figures.
     *
     * @param sensitivity as observed
     * @param specificity as observed
     */
    static ProofResult.Alternatives of(
            CutCounts at, ScoredRows rows, Estimate sensitivity, Estimate specificity, double level, boolean repeated) {
        Alternatives by = new Alternatives(at, level);
        TwoByTwo counts = at.counts();
        return new ProofResult.Alternatives(
                repeated ? by.ratio(true) : counts.lrPositive(level, false),
                repeated ? by.ratio(false) : counts.lrNegative(level, false),
                by.youden(sensitivity, specificity),
                RocArea.onLogit(rows, level, repeated));
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

    private Estimate youden(Estimate sensitivity, Estimate specificity) {
        String method = "square and add of the intervals of both shares (Newcombe 1998): " + sensitivity.method();
        Estimate plain = at.counts().youden(level, false);
        if (plain.value().isEmpty()) {
            return Estimate.missing(plain.n(), method, plain.why().orElse(""));
        }
        return TwoByTwo.squareAndAdd(plain.value().getAsDouble(), sensitivity, specificity, plain.n(), method);
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
