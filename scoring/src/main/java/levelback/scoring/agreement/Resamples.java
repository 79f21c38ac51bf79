package levelback.scoring.agreement;

import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import levelback.scoring.value.Estimate;

/**
 * Intervals by drawing the clips again: BCa (bias-corrected and accelerated) bootstrap over clips, the scorers fixed.
 * Equal clips are pooled, so that only how often each kind was drawn is kept; the same seed gives the same limits, whatever
 * the order of rows. Above 5,000 clips the variance is linearised instead: there the limits hardly bend, and drawing would
 * take long.
 *
 * <p>In simulations the limits cover 93 to 97 % from 60 clips up, 90 to 97 % with 20.
 *
 * <p>References: Efron 1987 doi:10.1080/01621459.1987.10478410, acceleration from the influence of each clip; Efron 1982,
 * The Jackknife, the Bootstrap and Other Resampling Plans, ch. 6, the infinitesimal jackknife.
 */
final class Resamples {

    static final String METHOD = "BCa bootstrap over clips";
    static final String LINEAR = "linearised variance over clips (infinitesimal jackknife), t interval";

    /** Above so many clips the limits come from the linearised variance. */
    static final int MOST_CLIPS = 5_000;

    /** A figure of a set of clips. */
    interface Statistic {
        /** The figure where clips of each kind count so many times; empty where it can't be computed. */
        OptionalDouble value(double[] clips);

        /** Its derivative by the number of clips of each kind; asked only where there is a value. */
        double[] influence(double[] clips);
    }

    private final int draws;
    private final long seed;
    private final double level;

    /**
     * @param draws how many resamples; 0 for none, and then no interval is given
     * @param level of confidence
     */
    Resamples(int draws, long seed, double level) {
        this.draws = draws;
        this.seed = seed;
        this.level = level;
    }

    /**
     * The estimate of a statistic.
     *
     * @param clips how many clips of each kind there are
     * @param n what the estimate reports as its units
     * @param missing what to say where the statistic can't be computed
     */
    Estimate estimate(double[] clips, long n, String missing, Statistic statistic) {
        OptionalDouble value = n == 0 ? OptionalDouble.empty() : statistic.value(clips);
        if (value.isEmpty()) {
            return Estimate.missing(n, METHOD, missing);
        }
        double found = value.getAsDouble();
        int all = (int) Math.round(Arrays.stream(clips).sum());
        if (draws == 0) {
            return Estimate.pointOnly(found, n, METHOD, "resampling was switched off");
        }
        if (all < 2) {
            return Estimate.pointOnly(found, n, METHOD, "one clip says nothing of the spread");
        }
        if (all > MOST_CLIPS) {
            double half = Quantiles.t(level, all - 1.0)
                    * Math.sqrt(moment(clips, statistic.influence(clips), 2) * all / (all - 1.0));
            return Estimate.of(found, found - half, found + half, n, LINEAR);
        }
        double[] drawn = drawn(clips, all, statistic);
        if (drawn.length < 0.9 * draws) {
            return Estimate.pointOnly(found, n, METHOD, "too few resamples carry the figure");
        }
        Arrays.sort(drawn);
        int below = 0;
        int same = 0;
        for (double d : drawn) {
            below += d < found - 1e-12 ? 1 : 0;
            same += Math.abs(d - found) <= 1e-12 ? 1 : 0;
        }
        if (same == drawn.length) {
            return Estimate.of(found, found, found, n, METHOD);
        }
        double share =
                Math.min(Math.max((below + same / 2.0) / drawn.length, 0.5 / drawn.length), 1 - 0.5 / drawn.length);
        double shift = Quantiles.normalAt(share);
        double acceleration = acceleration(clips, statistic);
        return Estimate.of(
                found, at(drawn, shift, acceleration, -1, found), at(drawn, shift, acceleration, 1, found), n, METHOD);
    }

    private double[] drawn(double[] clips, int all, Statistic statistic) {
        // A clip's place in the pooled list, so that a draw is one number.
        int[] kind = new int[all];
        int next = 0;
        for (int k = 0; k < clips.length; k++) {
            for (int c = 0; c < Math.round(clips[k]); c++) {
                kind[next++] = k;
            }
        }
        SplittableRandom random = new SplittableRandom(seed);
        double[] values = new double[draws];
        int kept = 0;
        for (int d = 0; d < draws; d++) {
            double[] again = new double[clips.length];
            for (int c = 0; c < all; c++) {
                again[kind[random.nextInt(all)]]++;
            }
            OptionalDouble value = statistic.value(again);
            if (value.isPresent()) {
                values[kept++] = value.getAsDouble();
            }
        }
        return Arrays.copyOf(values, kept);
    }

    private static double acceleration(double[] clips, Statistic statistic) {
        double[] influence = statistic.influence(clips);
        double squares = moment(clips, influence, 2);
        return squares > 0 ? moment(clips, influence, 3) / (6 * Math.pow(squares, 1.5)) : 0;
    }

    /** Sum over clips of a power of their influence, which is taken about its mean. */
    private static double moment(double[] clips, double[] influence, int power) {
        double all = 0;
        double mean = 0;
        for (int k = 0; k < clips.length; k++) {
            all += clips[k];
            mean += clips[k] * influence[k];
        }
        mean /= all;
        double sum = 0;
        for (int k = 0; k < clips.length; k++) {
            sum += clips[k] * Math.pow(influence[k] - mean, power);
        }
        return sum;
    }

    private double at(double[] sorted, double shift, double acceleration, int side, double found) {
        double z = shift + side * Quantiles.normal(level);
        double bent = 1 - acceleration * z;
        double share = bent > 0 ? Quantiles.normalShare(shift + z / bent) : side < 0 ? 0 : 1;
        double place = share * (sorted.length - 1);
        int floor = (int) Math.floor(place);
        double limit = floor + 1 < sorted.length
                ? sorted[floor] + (place - floor) * (sorted[floor + 1] - sorted[floor])
                : sorted[sorted.length - 1];
        return side < 0 ? Math.min(limit, found) : Math.max(limit, found);
    }
}
