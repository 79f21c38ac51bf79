package levelback.scoring.herd;

import levelback.scoring.proof.Proportions;
import levelback.scoring.value.Estimate;
import levelback.scoring.value.Interval;

/**
 * A share of a herd of known size, of which a part was scored.
 *
 * <p>Wilson's score interval with n·(N − 1)/(N − n) in place of n: the variance of a share drawn without replacement is
 * p(1 − p)/n · (N − n)/(N − 1). Where every cow was scored the share is known and the interval is that point.
 *
 * <p>References: Wilson (1927), J Am Stat Assoc 22:209, doi:10.1080/01621459.1927.10502953; Cochran (1977), Sampling
 * Techniques, 3rd ed., section 3.2, the correction.
 */
public final class FinitePopulation {

    /** Method of {@link #share}. */
    public static final String METHOD = "Wilson score interval, finite population";

    private FinitePopulation() {}

    /**
     * The share of a herd.
     *
     * @param x lame among those scored, 0 to {@code n}
     * @param n scored, at least 1
     * @param herd cows in the herd, at least {@code n}
     * @param level confidence level in (0, 1)
     * @throws IllegalArgumentException if an argument is out of its range
     */
    public static Estimate share(long x, long n, long herd, double level) {
        if (n < 1 || x < 0 || x > n || n > herd) {
            throw new IllegalArgumentException("not a share: " + x + " of " + n + " in a herd of " + herd);
        }
        double p = (double) x / n;
        if (n == herd) {
            return Estimate.of(p, p, p, n, METHOD + ": every cow was scored");
        }
        double effective = n * (herd - 1.0) / (herd - n);
        Interval interval = wilson(p, effective, Proportions.normalQuantile(level));
        return Estimate.of(
                p, x == 0 ? 0 : Math.min(p, interval.low()), x == n ? 1 : Math.max(p, interval.high()), n, METHOD);
    }

    private static Interval wilson(double p, double n, double z) {
        double z2n = z * z / n;
        double centre = (p + z2n / 2) / (1 + z2n);
        double half = z * Math.sqrt(p * (1 - p) / n + z2n / (4 * n)) / (1 + z2n);
        return new Interval(Math.max(0, centre - half), Math.min(1, centre + half));
    }
}
