package levelback.player.work;

import java.util.Optional;
import java.util.OptionalInt;
import levelback.scoring.foot.Claw;

/**
 * A finding as it is said at the chute, before it is on the card.
 *
 * @param claw the claw; empty takes the claw on which such a lesion is usually met
 * @param zone 0 to 12 on the claw map; empty takes the lesion's usual zone, not confirmed
 * @param lesion ICAR code
 * @param severity 1 mild, 2 moderate, 3 severe; empty where not said or where a stage stands
 * @param stage stage of digital dermatitis ({@code M1} to {@code M4.1}), or empty text
 * @param note free words, or empty text
 */
public record FindingDraft(
        Optional<Claw> claw, OptionalInt zone, String lesion, OptionalInt severity, String stage, String note) {

    /** A code alone, on the zone and claw where it is usually met. */
    public static FindingDraft of(String lesion) {
        return new FindingDraft(Optional.empty(), OptionalInt.empty(), lesion, OptionalInt.empty(), "", "");
    }

    /** A code on a zone of a claw. */
    public static FindingDraft of(Claw claw, int zone, String lesion) {
        return new FindingDraft(Optional.of(claw), OptionalInt.of(zone), lesion, OptionalInt.empty(), "", "");
    }

    /** The same with a severity. */
    public FindingDraft severe(int level) {
        return new FindingDraft(claw, zone, lesion, OptionalInt.of(level), stage, note);
    }

    /** The same with a stage of digital dermatitis. */
    public FindingDraft staged(String name) {
        return new FindingDraft(claw, zone, lesion, severity, name, note);
    }
}
