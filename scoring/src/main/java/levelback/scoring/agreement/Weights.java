package levelback.scoring.agreement;

/**
 * How much two different levels agree, by the numeric difference of the scores: 1 where they are the same, 0 at the
 * ends of the scale (or, nominal, wherever they differ).
 */
public enum Weights {
    /** 1 where the levels are the same, else 0. */
    NOMINAL,
    /** 1 − |x − y| ÷ (max − min). */
    LINEAR,
    /** 1 − (x − y)² ÷ (max − min)². */
    QUADRATIC;

    /**
     * The weight of each pair of levels.
     *
     * @param levels of the scale, ascending; on a scale of one level every kind is nominal
     */
    double[][] of(double[] levels) {
        int q = levels.length;
        double range = q == 0 ? 0 : levels[q - 1] - levels[0];
        double[][] weights = new double[q][q];
        for (int i = 0; i < q; i++) {
            for (int j = 0; j < q; j++) {
                double apart = range == 0 ? 0 : Math.abs(levels[i] - levels[j]) / range;
                weights[i][j] = switch (this) {
                    case NOMINAL -> i == j ? 1 : 0;
                    case LINEAR -> range == 0 && i != j ? 0 : 1 - apart;
                    case QUADRATIC -> range == 0 && i != j ? 0 : 1 - apart * apart;
                };
            }
        }
        return weights;
    }
}
