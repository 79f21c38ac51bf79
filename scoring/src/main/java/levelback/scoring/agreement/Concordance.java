package levelback.scoring.agreement;

import java.util.OptionalDouble;

/**
 * Kendall's coefficient of concordance over clips that every scorer scored, corrected for ties: 12 S ÷ (m²(n³ − n) − m ΣT),
 * S the squared deviations of the clips' rank sums, T = Σ(t³ − t) over the ties of a scorer.
 *
 * <p>Reference: Kendall and Babington Smith 1939 doi:10.1214/aoms/1177732186; Siegel and Castellan 1988, ch. 9.
 */
final class Concordance {

    private final Complete complete;
    private final int levels;

    Concordance(Complete complete, int levels) {
        this.complete = complete;
        this.levels = levels;
    }

    /**
     * W where each clip counts so many times; empty where no scorer told any two clips apart.
     *
     * @param clips how often each clip counts, whole numbers
     */
    OptionalDouble value(double[] clips) {
        int m = complete.scorers();
        double n = 0;
        for (double times : clips) {
            n += times;
        }
        double[] sums = new double[clips.length];
        double ties = 0;
        for (int j = 0; j < m; j++) {
            double[] given = new double[levels];
            for (int c = 0; c < clips.length; c++) {
                given[complete.level(c, j)] += clips[c];
            }
            double[] rank = new double[levels];
            double below = 0;
            for (int l = 0; l < levels; l++) {
                rank[l] = below + (given[l] + 1) / 2;
                below += given[l];
                ties += given[l] * given[l] * given[l] - given[l];
            }
            for (int c = 0; c < clips.length; c++) {
                sums[c] += rank[complete.level(c, j)];
            }
        }
        double mean = m * (n + 1) / 2;
        double s = 0;
        for (int c = 0; c < clips.length; c++) {
            s += clips[c] * (sums[c] - mean) * (sums[c] - mean);
        }
        double most = (double) m * m * (n * n * n - n) - m * ties;
        return n > 0 && most > 1e-9 ? OptionalDouble.of(12 * s / most) : OptionalDouble.empty();
    }
}
