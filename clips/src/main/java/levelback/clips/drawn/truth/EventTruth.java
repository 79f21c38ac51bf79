package levelback.clips.drawn.truth;

import java.util.Optional;
import levelback.scoring.value.Leg;

/**
 * Something that broke the even walk.
 *
 * @param pass number of the pass, from 1
 * @param timeS when it began, in seconds from frame 0
 * @param event {@code stop}, {@code slip}, {@code turn-back}, {@code two-cows}
 * @param leg the leg, where it is one leg's
 */
public record EventTruth(int pass, double timeS, String event, Optional<Leg> leg) {}
