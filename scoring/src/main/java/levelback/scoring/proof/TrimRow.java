package levelback.scoring.proof;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;
import levelback.scoring.value.Leg;

/**
 * One line of what was found when a foot was lifted.
 *
 * @param cow her number, as text
 * @param date day of the lift
 * @param leg the foot lifted, where known
 * @param lesion code in upper case, {@code NONE} where nothing was found, {@code REFUSED} where a control lift was not done
 * @param stage stage of digital dermatitis such as {@code M2}, or empty text
 * @param chance known chance with which a sound cow was drawn, in (0, 1]; empty means 1
 */
public record TrimRow(
        String cow, LocalDate date, Optional<Leg> leg, String lesion, String stage, OptionalDouble chance) {}
