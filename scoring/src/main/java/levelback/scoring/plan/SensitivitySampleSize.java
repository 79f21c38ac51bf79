package levelback.scoring.plan;

import levelback.scoring.proof.Proportions;

/**
 * Cows to score and lift for a sensitivity or a specificity within a margin.
 *
 * <p>Cows with a lesion: z²·Se(1 − Se)/m²; cows in all: that over the prevalence of lesions (for the specificity over one
 * less the prevalence), rounded up. Every cow scored is taken to be lifted; of a herd where only some are, that many must
 * be lifted.
 *
 * <p>Reference: Buderer (1996), Acad Emerg Med 3:895, doi:10.1111/j.1553-2712.1996.tb03538.x.
 */
public final class SensitivitySampleSize {

    private static final double ROUNDING = 1e-9;

    private SensitivitySampleSize() {}

    /** Cows for a sensitivity; every argument but the level as for {@link #forSpecificity}. */
    public static long forSensitivity(double expected, double margin, double prevalence, double level) {
        return cows(expected, margin, prevalence, level);
    }

    /**
     * Cows for a specificity.
     *
     * @param expected specificity expected, in (0, 1)
     * @param margin half the width wanted, above 0
     * @param prevalence share of cows with a lesion, in (0, 1)
     * @param level confidence level in (0, 1)
     * @throws IllegalArgumentException if an argument is out of its range
     */
    public static long forSpecificity(double expected, double margin, double prevalence, double level) {
        return cows(expected, margin, 1 - prevalence, level);
    }

    private static long cows(double expected, double margin, double share, double level) {
        if (!(expected > 0 && expected < 1)
                || !(margin > 0)
                || !(share > 0 && share < 1)
                || !(level > 0 && level < 1)) {
            throw new IllegalArgumentException(
                    "expected " + expected + ", margin " + margin + ", share " + share + ", level " + level);
        }
        double z = Proportions.normalQuantile(level);
        return (long) Math.ceil(z * z * expected * (1 - expected) / (margin * margin) / share - ROUNDING);
    }
}
