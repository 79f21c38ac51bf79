package levelback.player.work;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;
import levelback.scoring.value.Leg;
import levelback.store.herd.Cow;

/**
 * One cow on the list for the chute.
 *
 * @param why what put her on the list
 * @param scaleId scale of {@code level}; empty text where she was not scored in the visit
 * @param level her highest score in force in the visit; empty where she was not scored
 * @param firstFoot the leg that the scorer named with that score
 * @param waitingSince the first visit of her present run of lame scores, or the day she came on the list
 * @param chance known chance with which she was drawn, if she is a control lift
 * @param done whether her card is closed, or she was kept as refused
 */
public record ChuteRow(
        Cow cow,
        Why why,
        String scaleId,
        OptionalDouble level,
        Optional<Leg> firstFoot,
        LocalDate waitingSince,
        OptionalDouble chance,
        boolean done) {

    /** What puts a cow on the list. */
    public enum Why {
        /** Scored lame in the visit. */
        LAME,
        /** Scored sound and drawn by lot. */
        CONTROL,
        /** Brought in by number. */
        BY_NUMBER
    }
}
