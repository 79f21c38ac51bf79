package levelback.clips.drawn;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import levelback.scoring.value.Leg;

/**
 * One cow walking past once.
 *
 * @param traits who she is
 * @param severityS how lame she walks, on the latent line from 1 (sound) to 5
 * @param lameLeg the leg she favours; empty if none
 * @param direction which way
 * @param enterTimeS when the first of her comes into the picture, in seconds from frame 0; may be negative
 * @param gaitSeed seed of this walk's unevenness
 * @param events what breaks the walk
 */
public record WalkPlan(
        WalkerTraits traits,
        double severityS,
        Optional<Leg> lameLeg,
        Direction direction,
        double enterTimeS,
        long gaitSeed,
        List<WalkEvent> events) {

    /** @throws IllegalArgumentException if the severity is off the line or the time not finite */
    public WalkPlan {
        Objects.requireNonNull(traits, "traits");
        Objects.requireNonNull(lameLeg, "lameLeg");
        Objects.requireNonNull(direction, "direction");
        if (!(severityS >= 1 && severityS <= 5)) {
            throw new IllegalArgumentException("severityS must be 1 to 5: " + severityS);
        }
        if (!(Math.abs(enterTimeS) < 1e6)) {
            throw new IllegalArgumentException("enterTimeS must be finite: " + enterTimeS);
        }
        events = List.copyOf(events);
    }

    /** The same walk, entering at another time. */
    public WalkPlan enteringAt(double timeS) {
        return new WalkPlan(traits, severityS, lameLeg, direction, timeS, gaitSeed, events);
    }
}
