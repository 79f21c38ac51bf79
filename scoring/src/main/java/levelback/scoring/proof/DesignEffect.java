package levelback.scoring.proof;

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
     * @param counts of the lifted at the cut
     * @param cutLevel the first level at or above the cut
     * @param liftedOnly whether sizes are those of the lifted, weighted by one over their chance, or of all scored
     */
    static DesignEffect of(ScoredRows rows, CutCounts counts, int cutLevel, boolean liftedOnly) {
        return new DesignEffect(of(counts.ppv()), of(counts.npv()), ofSizes(rows, cutLevel, liftedOnly));
    }

    /** Where all are alike, the mean number of rows of a cow. */
    private static double of(CutCounts.Cluster share) {
        if (share.cows() < 2) {
            return Math.max(1, share.n());
        }
        double p = share.x() / share.n();
        double overRows = share.n() * p * (1 - p);
        double cows = share.cows();
        return overRows <= 0 ? share.n() / cows : Math.max(1, share.squares() / overRows * cows / (cows - 1));
    }

    private static double ofSizes(ScoredRows rows, int cutLevel, boolean liftedOnly) {
        double top = 0;
        double bottom = 0;
        for (int i = 0; i < rows.rows(); i++) {
            if (!liftedOnly || rows.state[i] != ScoredRows.NOT_LIFTED) {
                double weight = liftedOnly ? 1 / rows.chance[i] : 1;
                top += rows.level[i] >= cutLevel ? weight : 0;
                bottom += weight;
            }
        }
        double share = top / bottom;
        double overRows = 0;
        double overCows = 0;
        double cows = 0;
        for (int cow = 0; cow < rows.cows(); cow++) {
            double sum = 0;
            boolean any = false;
            for (int i = rows.cowStart[cow]; i < rows.cowStart[cow + 1]; i++) {
                if (!liftedOnly || rows.state[i] != ScoredRows.NOT_LIFTED) {
                    double weight = liftedOnly ? 1 / rows.chance[i] : 1;
                    double adds = ((rows.level[i] >= cutLevel ? 1 : 0) - share) * weight;
                    sum += adds;
                    overRows += adds * adds;
                    any = true;
                }
            }
            overCows += sum * sum;
            cows += any ? 1 : 0;
        }
        return overRows > 0 && cows > 1 ? Math.max(1, overCows / overRows * cows / (cows - 1)) : 1;
    }
}
