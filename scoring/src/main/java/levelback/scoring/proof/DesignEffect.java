package levelback.scoring.proof;

import java.util.function.IntPredicate;

/**
 * How much wider repeats of a cow make things: variance over cows by variance over rows, at least 1.
 *
 * <p>Reference: Kish (1965), Survey Sampling, 5.4; counts divided by it as in Korn & Graubard (1998), Confidence intervals
 * for proportions with small expected number of positive counts estimated from survey data, Surv Methodol 24:193.
 *
 * @param lame of the share of lesions among the lifted at or above the cut
 * @param sound of the share of lesions among the lifted below
 * @param sizes of the share of observations at or above the cut
 */
record DesignEffect(double lame, double sound, double sizes) {

    /** No cow repeats. */
    static final DesignEffect NONE = new DesignEffect(1, 1, 1);

    /**
     * The effects.
     *
     * @param cutLevel the first level at or above the cut
     * @param liftedOnly whether sizes are those of the lifted, weighted by one over their chance, or of all scored
     */
    static DesignEffect of(ScoredRows rows, int cutLevel, boolean liftedOnly) {
        IntPredicate lifted = i -> rows.state[i] != ScoredRows.NOT_LIFTED;
        IntPredicate lesion = i -> rows.state[i] == ScoredRows.LESION;
        IntPredicate lame = i -> rows.level[i] >= cutLevel;
        return new DesignEffect(
                of(rows, lifted.and(lame), lesion, false),
                of(rows, lifted.and(lame.negate()), lesion, false),
                of(rows, liftedOnly ? lifted : i -> true, lame, liftedOnly));
    }

    /** Of the share that {@code is} among those that {@code counts}; where all are alike, the mean number of rows of a cow. */
    private static double of(ScoredRows rows, IntPredicate counts, IntPredicate is, boolean weighted) {
        double top = 0;
        double bottom = 0;
        double n = 0;
        for (int i = 0; i < rows.rows(); i++) {
            if (counts.test(i)) {
                double weight = weighted ? 1 / rows.chance[i] : 1;
                top += is.test(i) ? weight : 0;
                bottom += weight;
                n++;
            }
        }
        double share = bottom > 0 ? top / bottom : 0;
        double overRows = 0;
        double overCows = 0;
        double cows = 0;
        for (int cow = 0; cow < rows.cows(); cow++) {
            double sum = 0;
            boolean any = false;
            for (int i = rows.cowStart[cow]; i < rows.cowStart[cow + 1]; i++) {
                if (counts.test(i)) {
                    double adds = ((is.test(i) ? 1 : 0) - share) * (weighted ? 1 / rows.chance[i] : 1);
                    sum += adds;
                    overRows += adds * adds;
                    any = true;
                }
            }
            overCows += sum * sum;
            cows += any ? 1 : 0;
        }
        if (overRows <= 0) {
            return cows > 0 ? n / cows : 1;
        }
        return Math.max(1, overCows / overRows * cows / Math.max(1, cows - 1));
    }
}
