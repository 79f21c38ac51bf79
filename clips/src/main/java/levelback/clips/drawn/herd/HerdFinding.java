package levelback.clips.drawn.herd;

import java.util.OptionalInt;

/**
 * A lesion written down at the chute.
 *
 * @param claw {@code lateral}, {@code medial} or {@code interdigital}
 * @param zone 0 to 12 on the claw map
 * @param code ICAR claw-health code
 * @param severity 1 to 3; empty for digital dermatitis
 * @param stage stage of digital dermatitis, or empty text
 */
public record HerdFinding(String claw, int zone, String code, OptionalInt severity, String stage) {}
