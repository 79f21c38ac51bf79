package levelback.scoring.proof;

/**
 * Score against lesion at one cut among the lifted, with the sums of squares and products over cows that every clustered
 * interval is made of.
 *
 * <p>For cow <i>c</i> let tp, fp be her lifted rows at or above the cut with and without a lesion, s and h all her lifted
 * rows with and without one. A share of a total is a ratio of two sums of these four, and the variance of a ratio
 * x/n over cows is {@code C/(C-1) * sum((x_c - p n_c)^2) / (sum n_c)^2} (Cochran 1977, ch. 6), so that the ten sums of
 * products are all it takes.
 */
final class CutCounts {

    private static final int TP = 0;
    private static final int FP = 1;
    private static final int S = 2;
    private static final int H = 3;

    /** Where the product of two of the four stands. */
    private static final int[][] AT = {{0, 1, 2, 3}, {1, 4, 5, 6}, {2, 5, 7, 8}, {3, 6, 8, 9}};

    private final TwoByTwo counts;
    private final long[] products;
    private final long cows;
    private final long cowsWithLesion;
    private final long cowsClean;
    private final long cowsPositive;
    private final long cowsNegative;

    /**
     * The sums at one cut.
     *
     * @param counts the four counts
     * @param products sums over cows of tp², tp·fp, tp·s, tp·h, fp², fp·s, fp·h, s², s·h, h², in this order
     * @param cows cows lifted
     * @param cowsWithLesion cows with a lifted row that had a lesion
     * @param cowsClean cows with a lifted row that had none
     * @param cowsPositive cows with a lifted row at or above the cut
     * @param cowsNegative cows with a lifted row below the cut
     */
    CutCounts(
            TwoByTwo counts,
            long[] products,
            long cows,
            long cowsWithLesion,
            long cowsClean,
            long cowsPositive,
            long cowsNegative) {
        this.counts = counts;
        this.products = products.clone();
        this.cows = cows;
        this.cowsWithLesion = cowsWithLesion;
        this.cowsClean = cowsClean;
        this.cowsPositive = cowsPositive;
        this.cowsNegative = cowsNegative;
    }

    /** The four counts. */
    TwoByTwo counts() {
        return counts;
    }

    /** Cows lifted. */
    long cows() {
        return cows;
    }

    /** Cows with a lifted row that had a lesion. */
    long cowsWithLesion() {
        return cowsWithLesion;
    }

    /** Cows with a lifted row that had none. */
    long cowsClean() {
        return cowsClean;
    }

    /** Share of the lifted with a lesion that scored at or above the cut. */
    Cluster sensitivity() {
        return ratio(new double[] {1, 0, 0, 0}, new double[] {0, 0, 1, 0}, cowsWithLesion);
    }

    /** Share of the lifted without a lesion that scored below the cut. */
    Cluster specificity() {
        return ratio(new double[] {0, -1, 0, 1}, new double[] {0, 0, 0, 1}, cowsClean);
    }

    /** Share of the lifted at or above the cut that had a lesion. */
    Cluster ppv() {
        return ratio(new double[] {1, 0, 0, 0}, new double[] {1, 1, 0, 0}, cowsPositive);
    }

    /** Share of the lifted below the cut that had none. */
    Cluster npv() {
        return ratio(new double[] {0, -1, 0, 1}, new double[] {-1, -1, 1, 1}, cowsNegative);
    }

    /**
     * A ratio over cows.
     *
     * @param x sum of the numerator
     * @param n sum of the denominator
     * @param squares sum over cows of the squared residual {@code x_c - p n_c}
     * @param cows cows with a part in the denominator
     */
    record Cluster(double x, double n, double squares, long cows) {}

    private Cluster ratio(double[] top, double[] bottom, long of) {
        double x = sum(top);
        double n = sum(bottom);
        double p = n > 0 ? x / n : 0;
        double[] residual = new double[4];
        for (int i = 0; i < residual.length; i++) {
            residual[i] = top[i] - p * bottom[i];
        }
        return new Cluster(x, n, squares(residual), of);
    }

    /** Sum over all lifted rows of a combination of tp, fp, s, h. */
    double sum(double[] of) {
        return of[TP] * counts.tp()
                + of[FP] * counts.fp()
                + of[S] * (counts.tp() + counts.fn())
                + of[H] * (counts.fp() + counts.tn());
    }

    /** Sum over cows of the square of a combination of tp, fp, s, h. */
    double squares(double[] of) {
        double total = 0;
        double size = 0;
        for (int i = 0; i < of.length; i++) {
            for (int j = 0; j < of.length; j++) {
                double term = of[i] * of[j] * products[AT[i][j]];
                total += term;
                size += Math.abs(term);
            }
        }
        // What is left of terms that cancel is rounding, not variance.
        return total <= 1e-13 * size ? 0 : total;
    }
}
