package levelback.scoring.agreement;

import java.util.OptionalDouble;

/**
 * Kendall's coefficient of concordance over clips that every scorer scored, corrected for ties: 12 S ÷ (m²(n³ − n) − m ΣT),
 * S the squared deviations of the clips' rank sums, T = Σ(t³ − t) over the ties of a scorer.
 *
 * <p>Reference: Kendall and Babington Smith 1939 doi:10.1214/aoms/1177732186; Siegel and Castellan 1988, ch. 9.
 */
final class Concordance implements Resamples.Statistic {

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
    @Override
    public OptionalDouble value(double[] clips) {
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

    /**
     * The derivative of W by how often each clip counts. With V the place of a score among its scorer's own scores (share
     * below, half of those equal, minus ½) and U the sum of a clip's V, W = mean U² ÷ (m Σ mean V²); a clip moves its own
     * U and V, and through the places those of the clips above it.
     */
    @Override
    public double[] influence(double[] clips) {
        int m = complete.scorers();
        double n = 0;
        for (double times : clips) {
            n += times;
        }
        double[][] place = new double[m][levels];
        double[] sum = new double[clips.length];
        double[] own = new double[clips.length];
        double spread = 0;
        for (int j = 0; j < m; j++) {
            double[] share = new double[levels];
            for (int c = 0; c < clips.length; c++) {
                share[complete.level(c, j)] += clips[c] / n;
            }
            double below = 0;
            double[] lifted = new double[levels];
            for (int l = 0; l < levels; l++) {
                place[j][l] = below + share[l] / 2 - 0.5;
                below += share[l];
                lifted[l] = share[l] * place[j][l];
                spread += lifted[l] * place[j][l];
            }
            double[] above = above(lifted);
            for (int c = 0; c < clips.length; c++) {
                int l = complete.level(c, j);
                sum[c] += place[j][l];
                own[c] += place[j][l] * place[j][l] + 2 * above[l];
            }
        }
        double together = 0;
        double[] moved = new double[clips.length];
        for (int c = 0; c < clips.length; c++) {
            together += clips[c] * sum[c] * sum[c] / n;
            moved[c] = sum[c] * sum[c];
        }
        for (int j = 0; j < m; j++) {
            double[] lifted = new double[levels];
            for (int c = 0; c < clips.length; c++) {
                lifted[complete.level(c, j)] += clips[c] * sum[c] / n;
            }
            double[] above = above(lifted);
            for (int c = 0; c < clips.length; c++) {
                moved[c] += 2 * above[complete.level(c, j)];
            }
        }
        double w = together / (m * spread);
        double mean = 0;
        for (int c = 0; c < clips.length; c++) {
            moved[c] = (moved[c] - w * m * own[c]) / (m * spread) / n;
            mean += clips[c] * moved[c] / n;
        }
        for (int c = 0; c < clips.length; c++) {
            moved[c] -= mean;
        }
        return moved;
    }

    /** Of each level, what lies above it and half of its own. */
    private static double[] above(double[] at) {
        double[] above = new double[at.length];
        double so = 0;
        for (int l = at.length - 1; l >= 0; l--) {
            above[l] = so + at[l] / 2;
            so += at[l];
        }
        return above;
    }
}
