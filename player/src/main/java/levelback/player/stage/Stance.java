package levelback.player.stage;

import levelback.scoring.value.Leg;

/**
 * A foot on the ground.
 *
 * @param downUs hoof strike, on the stream's own clock
 * @param upUs lift-off, after {@code downUs}
 * @param confirmed a hand has set or confirmed both; others are drawn hatched
 */
public record Stance(Leg leg, long downUs, long upUs, boolean confirmed) {

    /** @throws IllegalArgumentException if the foot lifts before it lands */
    public Stance {
        if (upUs <= downUs) {
            throw new IllegalArgumentException("down at " + downUs + ", up at " + upUs);
        }
    }

    /** How long the foot stood, in microseconds. */
    public long lengthUs() {
        return upUs - downUs;
    }
}
