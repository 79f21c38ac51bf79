package levelback.clips.drawn.herd;

import java.util.Optional;
import levelback.scoring.value.Leg;

/**
 * How a cow truly is on the day of a visit.
 *
 * @param cow her number
 * @param severity s of the gait model, on the 1 to 5 line
 * @param trueLevel the same on the 0 to 3 scale, by the herd's own cut
 * @param lameLeg the leg that hurts, where one does
 * @param lesionLeg the leg of her worst lesion, where she has one
 * @param lesion code of her worst lesion, or {@code NONE}
 * @param alarm whether an alarm lesion would lie open to the eye if she were lifted {@code liftDay} days later
 * @param liftDay days from this visit to the day on which she is, or would be, lifted
 */
public record HerdState(
        String cow,
        double severity,
        int trueLevel,
        Optional<Leg> lameLeg,
        Optional<Leg> lesionLeg,
        String lesion,
        boolean alarm,
        int liftDay) {}
