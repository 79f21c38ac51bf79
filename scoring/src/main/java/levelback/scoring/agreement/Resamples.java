package levelback.scoring.agreement;

import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.function.Function;
import levelback.scoring.value.Estimate;

/**
 * Intervals by drawing the clips again: BCa (bias-corrected and accelerated) bootstrap over clips, the scorers fixed.
 * Equal clips are pooled, so that only how often each kind was drawn is kept; the same seed gives the same limits, whatever
 * the order of rows.
 *
 * <p>Reference: Efron 1987 doi:10.1080/01621459.1987.10478410; acceleration by the jackknife.
 */
final class Resamples {

    static final String METHOD = "BCa bootstrap over clips";
    static final String BLOCKS = "jackknife over 200 blocks of clips, t interval";

    private static final int BLOCK_COUNT = 200;

    /** More draws of a clip than this take longer than a person waits; so many clips need no bending of limits. */
    private static final long MOST_WORK = 50_000_000;

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
    Estimate estimate(double[] clips, long n, String missing, Function<double[], OptionalDouble> statistic) {
        OptionalDouble value = n == 0 ? OptionalDouble.empty() : statistic.apply(clips);
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
        if ((long) all * draws > MOST_WORK) {
            return blocks(clips, all, n, found, statistic);
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

    /** Clips dealt at random into blocks, each left out in turn (Quenouille 1956 doi:10.1093/biomet/43.3-4.353). */
    private Estimate blocks(
            double[] clips, int all, long n, double found, Function<double[], OptionalDouble> statistic) {
        double[][] dealt = new double[BLOCK_COUNT][clips.length];
        SplittableRandom random = new SplittableRandom(seed);
        int[] places = new int[all];
        for (int i = 0; i < all; i++) {
            int other = random.nextInt(i + 1);
            places[i] = places[other];
            places[other] = i;
        }
        int next = 0;
        for (int k = 0; k < clips.length; k++) {
            for (int c = 0; c < Math.round(clips[k]); c++) {
                dealt[places[next++] % BLOCK_COUNT][k]++;
            }
        }
        double[] without = new double[BLOCK_COUNT];
        double mean = 0;
        for (int b = 0; b < BLOCK_COUNT; b++) {
            double[] rest = clips.clone();
            for (int k = 0; k < rest.length; k++) {
                rest[k] -= dealt[b][k];
            }
            without[b] = statistic.apply(rest).orElse(found);
            mean += without[b] / BLOCK_COUNT;
        }
        double squares = 0;
        for (double w : without) {
            squares += (w - mean) * (w - mean);
        }
        double half = Quantiles.t(level, BLOCK_COUNT - 1.0) * Math.sqrt(squares * (BLOCK_COUNT - 1.0) / BLOCK_COUNT);
        return Estimate.of(found, found - half, found + half, n, BLOCKS);
    }

    private double[] drawn(double[] clips, int all, Function<double[], OptionalDouble> statistic) {
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
            OptionalDouble value = statistic.apply(again);
            if (value.isPresent()) {
                values[kept++] = value.getAsDouble();
            }
        }
        return Arrays.copyOf(values, kept);
    }

    private static double acceleration(double[] clips, Function<double[], OptionalDouble> statistic) {
        double[] without = new double[clips.length];
        double[] weight = new double[clips.length];
        double sum = 0;
        double mean = 0;
        for (int k = 0; k < clips.length; k++) {
            if (clips[k] > 0) {
                double[] one = clips.clone();
                one[k]--;
                OptionalDouble value = statistic.apply(one);
                if (value.isPresent()) {
                    without[k] = value.getAsDouble();
                    weight[k] = clips[k];
                    sum += clips[k];
                    mean += clips[k] * without[k];
                }
            }
        }
        if (sum == 0) {
            return 0;
        }
        mean /= sum;
        double squares = 0;
        double cubes = 0;
        for (int k = 0; k < clips.length; k++) {
            double off = mean - without[k];
            squares += weight[k] * off * off;
            cubes += weight[k] * off * off * off;
        }
        return squares > 0 ? cubes / (6 * Math.pow(squares, 1.5)) : 0;
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
