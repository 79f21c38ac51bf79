package levelback.clips.drawn.herd;

import java.util.Optional;
import levelback.scoring.value.Leg;

/**
 * What a scorer wrote of a cow at a visit.
 *
 * @param cow her number
 * @param scorer {@code A} or {@code B}
 * @param level level of the 0 to 3 scale
 * @param leg the leg the scorer named, for a lame score
 */
public record HerdScore(String cow, String scorer, int level, Optional<Leg> leg) {}
