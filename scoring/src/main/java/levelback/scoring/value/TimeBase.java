package levelback.scoring.value;

/**
 * Seconds per tick of a stream's clock, as a fraction.
 *
 * @param numerator at least 1
 * @param denominator at least 1
 */
public record TimeBase(int numerator, int denominator) {

    /** Ticks of one microsecond. */
    public static final TimeBase MICROSECONDS = new TimeBase(1, 1_000_000);

    /** @throws IllegalArgumentException if a part is below 1 */
    public TimeBase {
        if (numerator < 1 || denominator < 1) {
            throw new IllegalArgumentException("time base must be positive: " + numerator + "/" + denominator);
        }
    }

    /** Reads {@code "1/15360"}. */
    public static TimeBase parse(String text) {
        int slash = text.indexOf('/');
        if (slash < 1) {
            throw new IllegalArgumentException("not a time base: " + text);
        }
        return new TimeBase(Integer.parseInt(text.substring(0, slash)), Integer.parseInt(text.substring(slash + 1)));
    }

    @Override
    public String toString() {
        return numerator + "/" + denominator;
    }
}
