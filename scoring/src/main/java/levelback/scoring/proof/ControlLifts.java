package levelback.scoring.proof;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import levelback.scoring.proof.VerificationBias.Figure;
import levelback.scoring.value.Estimate;

/**
 * Figures weighted by the known chance of being lifted, where sound-scoring cows were drawn at random.
 *
 * <p>Every lifted observation weighs one over its chance; ratios of weighted sums; variance linearised over cows with
 * C/(C-1); normal interval cut off at 0 and 1. Agrees with {@code svyratio} of R's survey 4.1-1.
 *
 * <p>Simulated coverage of the normal interval: where few drawn cows had a lesion, 88 to 91 % for sensitivity and npv and 83
 * to 93 % for the prevalence, which it puts too low. {@link LevelDraws} covers 94 to 98 % there and stands beside it.
 *
 * <p>Reference: Hájek (1971), comment in Godambe & Sprott, Foundations of Statistical Inference; Särndal, Swensson &
 * Wretman (1992), Model Assisted Survey Sampling, 5.7.
 */
final class ControlLifts {

    private static final String METHOD =
            "Hajek ratio weighted by one over the chance of the draw, variance clustered by cow";

    private final ScoredRows rows;
    private final int cutLevel;
    private final double level;

    private ControlLifts(ScoredRows rows, int cutLevel, double level) {
        this.rows = rows;
        this.cutLevel = cutLevel;
        this.level = level;
    }

    /**
     * The same figures with intervals by draws ({@link LevelDraws}) within each level and chance, which cover where few
     * drawn cows had a lesion and the normal interval does not.
     */
    static Optional<ProofResult.Weighted> draws(
            ScoredRows rows,
            CutCounts counts,
            int cutLevel,
            ProofResult.Weighted weighted,
            boolean repeated,
            double level,
            long seed) {
        if (rows.cows() < 2) {
            return Optional.empty();
        }
        TreeMap<Double, double[][]> byChance = new TreeMap<>();
        for (int i = 0; i < rows.rows(); i++) {
            if (rows.state[i] != ScoredRows.NOT_LIFTED) {
                double[][] of = byChance.computeIfAbsent(rows.chance[i], c -> new double[rows.levels.length][2]);
                of[rows.level[i]][0]++;
                of[rows.level[i]][1] += rows.state[i] == ScoredRows.LESION ? 1 : 0;
            }
        }
        List<double[]> strata = new ArrayList<>();
        for (int at = 0; at < rows.levels.length; at++) {
            for (var chance : byChance.entrySet()) {
                double[] of = chance.getValue()[at];
                if (of[0] > 0) {
                    strata.add(new double[] {at >= cutLevel ? 1 : 0, of[0] / chance.getKey(), of[0], of[1]});
                }
            }
        }
        boolean[] positive = new boolean[strata.size()];
        for (int i = 0; i < positive.length; i++) {
            positive[i] = strata.get(i)[0] > 0;
        }
        double[] lifted = column(strata, 2);
        PooledLevels levels = new PooledLevels(positive, column(strata, 1), lifted, column(strata, 3));
        DesignEffect effect = repeated ? DesignEffect.of(rows, counts, cutLevel, true) : DesignEffect.NONE;
        LevelDraws draws = new LevelDraws(levels, lifted, effect, repeated, level, seed);
        return Optional.of(new ProofResult.Weighted(
                draws.estimate(Figure.SENSITIVITY, weighted.sensitivity().n()),
                draws.estimate(Figure.SPECIFICITY, weighted.specificity().n()),
                draws.estimate(Figure.PPV, weighted.ppv().n()),
                draws.estimate(Figure.NPV, weighted.npv().n()),
                draws.estimate(Figure.PREVALENCE, weighted.prevalence().n()),
                weighted.lesionsTotal(),
                weighted.scoredTotal()));
    }

    private static double[] column(List<double[]> rows, int at) {
        return rows.stream().mapToDouble(row -> row[at]).toArray();
    }

    /** Which rows a ratio is about; -1 where it is all the same. */
    private record Of(int positive, int lesion) {
        boolean has(boolean isPositive, boolean hasLesion) {
            return (positive < 0 || (positive == 1) == isPositive) && (lesion < 0 || (lesion == 1) == hasLesion);
        }
    }

    private static final int ALL = -1;

    /**
     * The weighted figures; empty where no lifted observation was drawn by chance.
     *
     * @param cutLevel the first level at or above the cut
     */
    static Optional<ProofResult.Weighted> of(ScoredRows rows, int cutLevel, double level) {
        double lesions = 0;
        double scored = 0;
        boolean drawn = false;
        for (int i = 0; i < rows.rows(); i++) {
            if (rows.state[i] != ScoredRows.NOT_LIFTED) {
                drawn |= rows.chance[i] < 1;
                scored += 1 / rows.chance[i];
                lesions += rows.state[i] == ScoredRows.LESION ? 1 / rows.chance[i] : 0;
            }
        }
        if (!drawn) {
            return Optional.empty();
        }
        ControlLifts lifts = new ControlLifts(rows, cutLevel, level);
        return Optional.of(new ProofResult.Weighted(
                lifts.ratio(new Of(1, 1), new Of(ALL, 1), "no lifted cow had a lesion of the set"),
                lifts.ratio(new Of(0, 0), new Of(ALL, 0), "every lifted cow had a lesion of the set"),
                lifts.ratio(new Of(1, 1), new Of(1, ALL), "no lifted cow scored lame"),
                lifts.ratio(new Of(0, 0), new Of(0, ALL), "no lifted cow scored sound"),
                lifts.ratio(new Of(ALL, 1), new Of(ALL, ALL), "no cow was lifted"),
                lesions,
                scored));
    }

    /** Weighted share that {@code is} among those that {@code count}. */
    private Estimate ratio(Of is, Of count, String nothing) {
        double top = 0;
        double bottom = 0;
        long n = 0;
        for (int i = 0; i < rows.rows(); i++) {
            if (counts(count, i)) {
                top += counts(is, i) ? 1 / rows.chance[i] : 0;
                bottom += 1 / rows.chance[i];
                n++;
            }
        }
        if (n == 0) {
            return Estimate.missing(0, METHOD, nothing);
        }
        double value = Math.min(1, top / bottom);
        double squares = 0;
        long cows = 0;
        for (int cow = 0; cow < rows.cows(); cow++) {
            double sum = 0;
            boolean lifted = false;
            for (int i = rows.cowStart[cow]; i < rows.cowStart[cow + 1]; i++) {
                lifted |= rows.state[i] != ScoredRows.NOT_LIFTED;
                if (counts(count, i)) {
                    sum += ((counts(is, i) ? 1 : 0) - value) / rows.chance[i];
                }
            }
            squares += sum * sum;
            cows += lifted ? 1 : 0;
        }
        if (cows < 2) {
            return Estimate.pointOnly(value, n, METHOD, Proportions.ONE_COW);
        }
        double standardError = Math.sqrt(squares * cows / (cows - 1.0)) / bottom;
        if (standardError <= 0) {
            return Estimate.pointOnly(value, n, METHOD, "none or all: no interval by this method");
        }
        double half = Proportions.normalQuantile(level) * standardError;
        return Estimate.of(value, Math.max(0, value - half), Math.min(1, value + half), n, METHOD);
    }

    private boolean counts(Of which, int row) {
        return rows.state[row] != ScoredRows.NOT_LIFTED
                && which.has(rows.level[row] >= cutLevel, rows.state[row] == ScoredRows.LESION);
    }
}
