package levelback.scoring.value;

import java.math.BigInteger;
import java.util.Objects;

/**
 * A moment on a recording, as the stream's own presentation time stamp: never frame number divided by rate.
 *
 * @param ticks time stamp in ticks of {@code timeBase}; may be negative
 * @param timeBase seconds per tick
 */
public record MediaTime(long ticks, TimeBase timeBase) implements Comparable<MediaTime> {

    private static final BigInteger MICROS_PER_SECOND = BigInteger.valueOf(1_000_000);

    public MediaTime {
        Objects.requireNonNull(timeBase, "timeBase");
    }

    /** A moment given in whole microseconds. */
    public static MediaTime ofMicros(long timeUs) {
        return new MediaTime(timeUs, TimeBase.MICROSECONDS);
    }

    /**
     * The same moment in microseconds, rounded to nearest, halves away from zero, which is how FFmpeg's
     * {@code av_rescale_q} rounds.
     */
    public long timeUs() {
        BigInteger scaled = BigInteger.valueOf(ticks)
                .multiply(BigInteger.valueOf(timeBase.numerator()))
                .multiply(MICROS_PER_SECOND);
        BigInteger divisor = BigInteger.valueOf(timeBase.denominator());
        BigInteger half = BigInteger.valueOf(timeBase.denominator() / 2);
        BigInteger rounded = scaled.signum() < 0 ? scaled.subtract(half) : scaled.add(half);
        return rounded.divide(divisor).longValueExact();
    }

    /** Seconds as a floating number, for showing. */
    public double seconds() {
        return (double) ticks * timeBase.numerator() / timeBase.denominator();
    }

    @Override
    public int compareTo(MediaTime other) {
        BigInteger mine = BigInteger.valueOf(ticks)
                .multiply(BigInteger.valueOf(timeBase.numerator()))
                .multiply(BigInteger.valueOf(other.timeBase.denominator()));
        BigInteger theirs = BigInteger.valueOf(other.ticks)
                .multiply(BigInteger.valueOf(other.timeBase.numerator()))
                .multiply(BigInteger.valueOf(timeBase.denominator()));
        return mine.compareTo(theirs);
    }
}
