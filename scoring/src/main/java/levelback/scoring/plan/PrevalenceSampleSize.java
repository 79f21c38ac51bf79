package levelback.scoring.plan;

import levelback.scoring.proof.Proportions;

/**
 * Cows to score for a prevalence within a margin.
 *
 * <p>n₀ = z²·p(1 − p)/m², cows = n₀/(1 + (n₀ − 1)/N), rounded up; at least 1, at most N.
 *
 * <p>Reference: Cochran (1977), Sampling Techniques, 3rd ed., section 4.4.
 */
public final class PrevalenceSampleSize {

    /** A whole number of cows that rounding in the last digits left a trifle above itself stays that number. */
    private static final double ROUNDING = 1e-9;

    private PrevalenceSampleSize() {}

    /**
     * How many cows.
     *
     * @param herd cows in the herd, at least 1
     * @param margin half the width wanted, as a share above 0
     * @param expected prevalence expected, as a share from 0 to 1; at 0 and 1 the formula asks for nothing and the answer is 1
     * @param level confidence level in (0, 1)
     * @throws IllegalArgumentException if an argument is out of its range
     */
    public static long cows(long herd, double margin, double expected, double level) {
        if (herd < 1 || !(margin > 0) || !(expected >= 0 && expected <= 1) || !(level > 0 && level < 1)) {
            throw new IllegalArgumentException(
                    "herd " + herd + ", margin " + margin + ", expected " + expected + ", level " + level);
        }
        double z = Proportions.normalQuantile(level);
        double unlimited = z * z * expected * (1 - expected) / (margin * margin);
        if (unlimited <= 1) {
            return 1;
        }
        double cows = unlimited / (1 + (unlimited - 1) / herd);
        return Math.max(1, Math.min(herd, (long) Math.ceil(cows - ROUNDING)));
    }
}
