package levelback.scoring.proof;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The figures of all scored cows where only some were lifted: within one score level the never lifted are taken to be
 * like the lifted.
 *
 * <p>With N observations and share p̂ of lesions among the lifted at score level s: sensitivity
 * {@code Σ_{s≥cut} N p̂ / Σ N p̂}, specificity likewise with {@code 1 - p̂} below the cut, prevalence {@code Σ N p̂ / Σ N},
 * predictive values within each side of the cut, area over the levels with weights {@code N p̂} and {@code N (1 - p̂)},
 * ties a half. Intervals: {@link CorrectedDelta}, {@link CowBootstrap}.
 *
 * <p>Reference: Begg & Greenes (1983), Assessment of diagnostic tests when disease verification is subject to selection
 * bias, Biometrics 39:207, doi:10.2307/2530820.
 */
final class VerificationBias {

    /** The assumption in words. */
    static final String ASSUMPTION = "Among observations of one score, being lifted had nothing to do with having a"
            + " lesion; the never lifted are taken to be like the lifted of their score.";

    /** The figures of the correction. */
    enum Figure {
        SENSITIVITY,
        SPECIFICITY,
        PPV,
        NPV,
        PREVALENCE,
        AUC
    }

    private final PooledLevels levels;

    VerificationBias(PooledLevels levels) {
        this.levels = levels;
    }

    /** Empty where too few were lifted, see {@link PooledLevels#obstacle}. */
    static Optional<VerificationBias> of(long[] counts, int cutLevel) {
        return PooledLevels.of(counts, cutLevel).map(VerificationBias::new);
    }

    PooledLevels levels() {
        return levels;
    }

    /** One figure without its interval; empty where it is nothing over nothing. */
    OptionalDouble value(Figure figure) {
        return switch (figure) {
            case SENSITIVITY -> share(mass(true, true), mass(true, false));
            case SPECIFICITY -> share(mass(false, false), mass(false, true));
            case PPV -> share(mass(true, true), mass(false, true));
            case NPV -> share(mass(false, false), mass(true, false));
            case PREVALENCE -> share(mass(true, true) + mass(true, false), mass(false, true) + mass(false, false));
            case AUC -> area();
        };
    }

    /** How many observations stand behind a figure. */
    long units(Figure figure) {
        return Math.round(levels.scored(figure == Figure.PPV || figure == Figure.NPV, figure == Figure.PPV));
    }

    /** What is missing where sensitivity or specificity has no value; empty text where both have. */
    String gap() {
        boolean both = value(Figure.SENSITIVITY).isPresent()
                && value(Figure.SPECIFICITY).isPresent();
        return both ? "" : nothing();
    }

    /** What is missing where a figure has no value. */
    String nothing() {
        return mass(true, true) + mass(true, false) > 0
                ? "every cow is estimated to have a lesion"
                : "no lesion is estimated";
    }

    /** Estimated observations with (or without) a lesion on one side of the cut. */
    double mass(boolean lesion, boolean positive) {
        double sum = 0;
        for (int i = 0; i < levels.size(); i++) {
            sum += levels.positive[i] == positive ? levels.mass(i, lesion) : 0;
        }
        return sum;
    }

    private static OptionalDouble share(double part, double rest) {
        return part + rest > 0 ? OptionalDouble.of(part / (part + rest)) : OptionalDouble.empty();
    }

    private OptionalDouble area() {
        double sick = 0;
        double sound = 0;
        double area = 0;
        for (int i = 0; i < levels.size(); i++) {
            double a = levels.mass(i, true);
            double b = levels.mass(i, false);
            area += a * (sound + b / 2);
            sick += a;
            sound += b;
        }
        return sick > 0 && sound > 0 ? OptionalDouble.of(Math.min(1, area / (sick * sound))) : OptionalDouble.empty();
    }
}
