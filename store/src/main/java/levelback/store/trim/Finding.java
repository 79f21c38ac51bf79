package levelback.store.trim;

import java.util.OptionalInt;
import levelback.scoring.foot.Claw;

/**
 * One finding on a foot.
 *
 * @param zone 0 to 12 on the claw map; empty where not said
 * @param zoneConfirmed false while the zone is only the usual one for this lesion
 * @param lesion ICAR code
 * @param severity 1 to 3; empty where not said or where a stage stands
 * @param stage stage of digital dermatitis, or empty text
 */
public record Finding(
        FindingId id,
        FootId foot,
        Claw claw,
        OptionalInt zone,
        boolean zoneConfirmed,
        String lesion,
        OptionalInt severity,
        String stage,
        String note) {}
