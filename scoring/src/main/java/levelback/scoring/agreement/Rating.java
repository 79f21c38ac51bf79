package levelback.scoring.agreement;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One look of a scorer at a clip.
 *
 * @param scorer who scored
 * @param clip what was scored
 * @param score a level of the scale; empty where the cell is missing: the scorer and the clip are still counted
 * @param cow the cow on the clip, where known: clips of one cow are not independent
 * @param session which time the scorer went through the clips, from 1
 */
public record Rating(String scorer, String clip, OptionalDouble score, Optional<String> cow, int session) {

    /** @throws IllegalArgumentException if a name is empty, the score is not finite or the session is below 1 */
    public Rating {
        if (scorer.isEmpty() || clip.isEmpty()) {
            throw new IllegalArgumentException("a rating names its scorer and its clip");
        }
        if (score.isPresent() && !Double.isFinite(score.getAsDouble())) {
            throw new IllegalArgumentException("a score is never " + score.getAsDouble());
        }
        if (session < 1) {
            throw new IllegalArgumentException("sessions count from 1: " + session);
        }
    }

    /** A score in session 1, cow not known. */
    public static Rating of(String scorer, String clip, double score) {
        return new Rating(scorer, clip, OptionalDouble.of(score), Optional.empty(), 1);
    }
}
