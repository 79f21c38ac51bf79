package levelback.scoring.foot;

import java.util.List;

/**
 * A lesion of the harmonised claw-health list.
 *
 * @param code ICAR claw-health code, upper case
 * @param name trade name
 * @param shortName two or three words for a key
 * @param definition what it is, in our own words
 * @param group skin, horn, or shape and swelling
 * @param alarm acutely painful and wanting action that day, by common practice; a list that users may change
 * @param usualZones zones where it is usually seen, likeliest first
 * @param staged whether digital dermatitis stages take the place of a severity
 */
public record Lesion(
        String code,
        String name,
        String shortName,
        String definition,
        Group group,
        boolean alarm,
        List<Integer> usualZones,
        boolean staged) {

    /** How the lesion keys are grouped. */
    public enum Group {
        SKIN,
        HORN,
        SHAPE_AND_SWELLING
    }

    public Lesion {
        usualZones = List.copyOf(usualZones);
    }
}
