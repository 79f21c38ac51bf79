package levelback.scoring.gait;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How the measures are wanted.
 *
 * @param frameRateHz frames per second of the film the times were read from; each event then has the standard
 *     uncertainty 1/(f·√12) (uniform over one frame, JCGM 100:2008 4.3.7)
 * @param digitisingM standard uncertainty of a print's x in metres, independent from print to print
 * @param calibration the error that all prints share
 * @param level of the intervals, such as 0.95
 */
public record GaitQuestion(
        OptionalDouble frameRateHz, OptionalDouble digitisingM, Optional<PrintError> calibration, double level) {

    /** @throws IllegalArgumentException if a number is out of its range */
    public GaitQuestion {
        if (frameRateHz.isPresent() && !(frameRateHz.getAsDouble() > 0 && frameRateHz.getAsDouble() < 1e6)) {
            throw new IllegalArgumentException("frame rate must be positive");
        }
        if (digitisingM.isPresent() && !(digitisingM.getAsDouble() >= 0 && digitisingM.getAsDouble() < 1e3)) {
            throw new IllegalArgumentException("digitising uncertainty must not be negative");
        }
        if (!(level > 0 && level < 1)) {
            throw new IllegalArgumentException("level must lie between 0 and 1");
        }
    }

    /** Intervals of 95 %, from the spread over strides alone. */
    public static GaitQuestion plain() {
        return new GaitQuestion(OptionalDouble.empty(), OptionalDouble.empty(), Optional.empty(), 0.95);
    }

    /** The same with the frame's own uncertainty in it. */
    public GaitQuestion atFrameRate(double hz) {
        return new GaitQuestion(OptionalDouble.of(hz), digitisingM, calibration, level);
    }

    /** The same with the uncertainty of digitising in it. */
    public GaitQuestion digitisedTo(double metres) {
        return new GaitQuestion(frameRateHz, OptionalDouble.of(metres), calibration, level);
    }

    /** Standard uncertainty of one event's time in seconds: 1/(f·√12); 0 without a frame rate. */
    public double eventS() {
        return frameRateHz.isPresent() ? 1 / (frameRateHz.getAsDouble() * Math.sqrt(12)) : 0;
    }

    /** Whether anything is known of how well times or places were measured. */
    boolean knowsMeasurement() {
        return frameRateHz.isPresent() || digitisingM.isPresent() || calibration.isPresent();
    }
}
