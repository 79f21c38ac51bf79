package levelback.scoring.proof;

import java.util.Optional;
import levelback.scoring.value.Estimate;

/**
 * Figures weighted by the known chance of being lifted, where sound-scoring cows were drawn at random.
 *
 * <p>Every lifted observation weighs one over its chance; ratios of weighted sums; variance linearised over cows with
 * C/(C-1); normal interval cut off at 0 and 1. Agrees with {@code svyratio} of R's survey 4.1-1.
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
