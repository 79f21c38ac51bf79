package levelback.scoring.agreement;

import levelback.scoring.value.Estimate;

/**
 * Fleiss' kappa and Gwet's AC1 and AC2 over any number of scorers with missing cells: (pa − pe) ÷ (1 − pe), where pa is
 * the weighted agreement averaged over clips with two scores or more, and the shares π of the levels are the mean over
 * clips with a score of the clip's own shares. pe = Σ w πᵢ πⱼ for Fleiss, Σw ÷ (q(q − 1)) · Σ π(1 − π) for AC.
 *
 * <p>References: Fleiss 1971 doi:10.1037/h0031619; Gwet 2008 doi:10.1348/000711006X126600, with his linearised variance
 * over clips (scorers fixed) and t on clips − 1; missing cells as in Gwet, Handbook of Inter-Rater Reliability, 2014.
 * In simulations the intervals cover 92 to 96 % with 60 clips and 93 to 96 % with 200; with 20 clips AC2 quadratic of two
 * scorers 85 to 89 %, Fleiss' kappa near 0 of five scorers 89 %.
 */
final class BeyondChance {

    static final String METHOD = "Gwet's linearised variance over clips, t interval";

    private static final double TINY = 1e-12;

    private BeyondChance() {}

    /** Which chance is taken off. */
    enum Chance {
        FLEISS,
        GWET
    }

    static Estimate of(LevelCounts counts, double[] levels, Weights kind, Chance chance, double level) {
        long n2 = counts.compared();
        if (n2 == 0) {
            return Estimate.missing(0, METHOD, "no clip has two scores");
        }
        int q = levels.length;
        if (q < 2) {
            return Estimate.missing(n2, METHOD, "every score is the same level: no agreement beyond chance");
        }
        double[][] w = kind.of(levels);
        double[] clips = counts.clips();
        int kinds = counts.kinds();
        double[] agreed = new double[kinds];
        double[] shares = new double[q];
        double n = 0;
        double sum = 0;
        for (int k = 0; k < kinds; k++) {
            int[] r = counts.counts(k);
            int scores = counts.scores(k);
            n += clips[k];
            for (int i = 0; i < q; i++) {
                shares[i] += clips[k] * r[i] / scores;
            }
            if (scores >= 2) {
                for (int i = 0; i < q; i++) {
                    double star = -1;
                    for (int j = 0; j < q; j++) {
                        star += w[i][j] * r[j];
                    }
                    agreed[k] += r[i] * star / ((double) scores * (scores - 1));
                }
                sum += clips[k] * agreed[k];
            }
        }
        double pa = sum / n2;
        for (int i = 0; i < q; i++) {
            shares[i] /= n;
        }
        double[] slope = slope(w, shares, chance);
        double pe = 0;
        for (int i = 0; i < q; i++) {
            pe += shares[i] * slope[i];
        }
        if (Math.abs(1 - pe) < TINY) {
            return Estimate.missing(n2, METHOD, "every score is the same level: no agreement beyond chance");
        }
        double value = (pa - pe) / (1 - pe);
        if (n < 2) {
            return Estimate.pointOnly(value, n2, METHOD, "one clip says nothing of the spread");
        }
        double squares = 0;
        for (int k = 0; k < kinds; k++) {
            int[] r = counts.counts(k);
            int scores = counts.scores(k);
            double expected = 0;
            for (int i = 0; i < q; i++) {
                expected += slope[i] * r[i] / scores;
            }
            double own = scores >= 2 ? n / n2 * (agreed[k] - pe) / (1 - pe) : 0;
            double off = own - 2 * (1 - value) * (expected - pe) / (1 - pe) - value;
            squares += clips[k] * off * off;
        }
        double half = Quantiles.t(level, n - 1) * Math.sqrt(squares / (n * (n - 1)));
        // With missing cells the value itself can lie below -1.
        return Estimate.of(
                value,
                Math.min(value, Math.max(-1, value - half)),
                Math.max(value, Math.min(1, value + half)),
                n2,
                METHOD);
    }

    /** What a share of each level adds to the agreement expected by chance. */
    private static double[] slope(double[][] w, double[] shares, Chance chance) {
        int q = shares.length;
        double[] slope = new double[q];
        double all = 0;
        for (double[] row : w) {
            for (double weight : row) {
                all += weight;
            }
        }
        for (int i = 0; i < q; i++) {
            if (chance == Chance.GWET) {
                slope[i] = all / (q * (q - 1.0)) * (1 - shares[i]);
            } else {
                for (int j = 0; j < q; j++) {
                    slope[i] += (w[i][j] + w[j][i]) / 2 * shares[j];
                }
            }
        }
        return slope;
    }
}
