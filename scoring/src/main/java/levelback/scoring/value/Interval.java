package levelback.scoring.value;

/**
 * An interval with both ends in.
 *
 * @param low finite lower end
 * @param high finite upper end, at least {@code low}
 */
public record Interval(double low, double high) {

    /** @throws IllegalArgumentException if an end is not finite or the ends are crossed */
    public Interval {
        if (!(low <= high) || Double.isInfinite(low) || Double.isInfinite(high)) {
            throw new IllegalArgumentException("not an interval: " + low + " to " + high);
        }
    }
}
