package levelback.scoring.proof;

import java.time.LocalDate;
import java.util.Optional;

/**
 * What is asked of the scores.
 *
 * @param cut a score at or above it counts as positive
 * @param unit cow or leg
 * @param windowFromDays first day of the window after the score, in days
 * @param windowToDays last day of the window, both ends in
 * @param lesions the lesions looked for
 * @param scorer one scorer only; empty for all
 * @param until end of follow-up; empty for none
 * @param level confidence level such as 0.95
 * @param seed seed of every random method
 */
public record ProofQuestion(
        double cut,
        Unit unit,
        int windowFromDays,
        int windowToDays,
        LesionSet lesions,
        Optional<String> scorer,
        Optional<LocalDate> until,
        double level,
        long seed) {

    /** What one observation is. */
    public enum Unit {
        COW,
        LEG
    }
}
