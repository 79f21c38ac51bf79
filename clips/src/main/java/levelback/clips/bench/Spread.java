package levelback.clips.bench;

import java.util.Arrays;

/**
 * How a series of times is spread.
 *
 * @param p50 median, in milliseconds
 * @param p95 95th percentile, in milliseconds
 * @param max longest, in milliseconds
 */
public record Spread(double p50, double p95, double max) {

    private static final double MILLIS = 1e6;

    /**
     * Of times in nanoseconds, at least one. The percentile is the smallest time that at least so many of a hundred don't
     * exceed (nearest rank).
     */
    public static Spread ofNanos(long... nanos) {
        if (nanos.length == 0) {
            throw new IllegalArgumentException("no times");
        }
        long[] sorted = nanos.clone();
        Arrays.sort(sorted);
        return new Spread(rank(sorted, 50) / MILLIS, rank(sorted, 95) / MILLIS, sorted[sorted.length - 1] / MILLIS);
    }

    private static long rank(long[] sorted, int percent) {
        long rank = ((long) percent * sorted.length + 99) / 100;
        return sorted[(int) Math.max(0, rank - 1)];
    }
}
