package levelback.clips.drawn.herd;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A cow in the chute.
 *
 * @param cow her number
 * @param date the day
 * @param why why she came
 * @param chance known chance of a control lift; empty for every other
 * @param refused a control lift that was not done; it has no feet
 * @param feet the feet in hand
 * @param medicine a note, where one was typed
 * @param lookAgainOn day of the recheck
 */
public record HerdLift(
        String cow,
        LocalDate date,
        Why why,
        OptionalDouble chance,
        boolean refused,
        List<HerdFoot> feet,
        Optional<HerdMedicine> medicine,
        Optional<LocalDate> lookAgainOn) {

    /** Why a cow is lifted. */
    public enum Why {
        /** Scorer A scored her 2 or 3. */
        LAME,
        /** Scored sound, drawn at random with a known chance. */
        CONTROL,
        /** Scored sound, due for trimming anyway. */
        ROUTINE,
        /** To take a block off; nothing else is looked at. */
        BLOCK_OFF
    }

    public HerdLift {
        feet = List.copyOf(feet);
    }
}
