package levelback.scoring.gait;

import java.util.Objects;
import java.util.OptionalDouble;
import levelback.scoring.value.Leg;

/**
 * A hoof strike or lift-off.
 *
 * @param timeS seconds on the recording's clock
 * @param leg whose hoof
 * @param event strike or lift-off
 * @param xM where the print lies along her way, in metres; empty where nobody measured it
 * @param yM where the print lies across her way, in metres; empty where nobody measured it
 */
public record Footfall(double timeS, Leg leg, Event event, OptionalDouble xM, OptionalDouble yM) {

    /** What the hoof does. */
    public enum Event {
        /** It meets the floor. */
        DOWN,
        /** It leaves the floor. */
        UP
    }

    /** @throws IllegalArgumentException if a number is not finite */
    public Footfall {
        Objects.requireNonNull(leg, "leg");
        Objects.requireNonNull(event, "event");
        if (!Double.isFinite(timeS) || !Double.isFinite(xM.orElse(0)) || !Double.isFinite(yM.orElse(0))) {
            throw new IllegalArgumentException("a footfall has finite numbers");
        }
    }

    /** A footfall without its place across her way. */
    public static Footfall of(double timeS, Leg leg, Event event, OptionalDouble xM) {
        return new Footfall(timeS, leg, event, xM, OptionalDouble.empty());
    }
}
