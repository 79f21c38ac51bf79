package levelback.scoring.herd;

import java.util.OptionalLong;

/**
 * What is asked of a herd's scores.
 *
 * @param lameCut a score at or above it is lame
 * @param severeCut a score at or above it is severely lame
 * @param herdSize cows in the herd; empty where not known
 * @param level confidence level such as 0.95
 */
public record HerdQuestion(double lameCut, double severeCut, OptionalLong herdSize, double level) {

    /** @throws IllegalArgumentException if a cut is no number, the herd is empty or the level is not in (0, 1) */
    public HerdQuestion {
        if (!Double.isFinite(lameCut) || !Double.isFinite(severeCut)) {
            throw new IllegalArgumentException("a cut is a number");
        }
        if (herdSize.orElse(1) < 1 || !(level > 0 && level < 1)) {
            throw new IllegalArgumentException("herd of " + herdSize + ", level " + level);
        }
    }

    /** Severe is every score above the cut: the lowest number above it. */
    public static double severeAbove(double lameCut) {
        return Math.nextUp(lameCut);
    }
}
