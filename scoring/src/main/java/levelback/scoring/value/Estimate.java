package levelback.scoring.value;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A figure with its interval, the number of units behind it and how it was made.
 *
 * @param value the figure; empty where the data cannot carry it, and then {@code why} says what is missing
 * @param interval its interval; empty where none can be given, and then {@code why} says why
 * @param n units in the denominator
 * @param method how value and interval were made, for a reader
 * @param why what is missing; present whenever value or interval is empty
 */
public record Estimate(OptionalDouble value, Optional<Interval> interval, long n, String method, Optional<String> why) {

    /** @throws IllegalArgumentException if the value is not finite, or something is missing without a reason */
    public Estimate {
        Objects.requireNonNull(method, "method");
        if (value.isPresent() && !Double.isFinite(value.getAsDouble())) {
            throw new IllegalArgumentException("an estimate is never " + value.getAsDouble());
        }
        if ((value.isEmpty() || interval.isEmpty()) && why.isEmpty()) {
            throw new IllegalArgumentException("an estimate without value or interval must say why");
        }
        if (value.isEmpty() && interval.isPresent()) {
            throw new IllegalArgumentException("an interval without a value");
        }
    }

    /** A figure with its interval. */
    public static Estimate of(double value, double low, double high, long n, String method) {
        return new Estimate(
                OptionalDouble.of(value), Optional.of(new Interval(low, high)), n, method, Optional.empty());
    }

    /** A figure for which no interval can be given. */
    public static Estimate pointOnly(double value, long n, String method, String why) {
        return new Estimate(OptionalDouble.of(value), Optional.empty(), n, method, Optional.of(why));
    }

    /** A figure that the data cannot carry. */
    public static Estimate missing(long n, String method, String why) {
        return new Estimate(OptionalDouble.empty(), Optional.empty(), n, method, Optional.of(why));
    }
}
