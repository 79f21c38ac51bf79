package levelback.scoring.proof;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.stream.DoubleStream;
import levelback.scoring.proof.VerificationBias.Figure;
import levelback.scoring.value.Estimate;
import levelback.scoring.value.Interval;

/**
 * Percentile intervals of the corrected figures by drawing whole cows with replacement: what repeats of a cow share is
 * drawn with her.
 *
 * <p>References: Efron & Tibshirani (1993), An Introduction to the Bootstrap, ch. 13; Field & Welsh (2007), Bootstrapping
 * clustered data, J R Stat Soc B 69:369, doi:10.1111/j.1467-9868.2007.00593.x. Quantiles as in R's type 7.
 */
final class CowBootstrap {

    /** Resamples drawn. */
    static final int RESAMPLES = 2000;

    /** Above so many cows the linearised variance is as good, and drawing them would take too long. */
    static final int MOST_COWS = 5000;

    private static final String METHOD = "Begg and Greenes 1983 by score level, bootstrap clustered by cow, "
            + RESAMPLES + " resamples, percentile interval";

    private static final double LEAST_USABLE_SHARE = 0.9;

    /** Where each cow's entries begin, and their number at the end. */
    private final int[] start;

    /** Place in the counts (three for each level), and how much of it the cow has. */
    private final int[] place;

    private final int[] amount;
    private final int size;
    private final VerificationBias whole;
    private final Map<Figure, Interval> intervals;

    /**
     * Draws.
     *
     * @param whole the correction of all rows
     * @param cutLevel the first level at or above the cut
     */
    CowBootstrap(VerificationBias whole, ScoredRows rows, int cutLevel, double level, long seed) {
        this.whole = whole;
        size = rows.counts.length;
        int[][] cows = new int[rows.cows()][];
        for (int cow = 0; cow < cows.length; cow++) {
            int[] of = new int[rows.cowStart[cow + 1] - rows.cowStart[cow]];
            for (int i = 0; i < of.length; i++) {
                int row = rows.cowStart[cow] + i;
                of[i] = 3 * rows.level[row] + rows.state[row];
            }
            Arrays.sort(of);
            cows[cow] = of;
        }
        // By what they hold, not by their names: the same herd under other numbers draws the same.
        Arrays.sort(cows, Arrays::compare);
        start = new int[cows.length + 1];
        int[] places = new int[3 * rows.rows()];
        int[] amounts = new int[3 * rows.rows()];
        int entries = 0;
        for (int cow = 0; cow < cows.length; cow++) {
            start[cow] = entries;
            for (int i = 0; i < cows[cow].length; i++) {
                int same = 1;
                while (i + 1 < cows[cow].length && cows[cow][i + 1] == cows[cow][i]) {
                    i++;
                    same++;
                }
                places[entries] = cows[cow][i];
                amounts[entries++] = same;
            }
        }
        start[cows.length] = entries;
        place = Arrays.copyOf(places, entries);
        amount = Arrays.copyOf(amounts, entries);
        intervals = draw(cutLevel, level, seed);
    }

    /** A figure with its interval. */
    Estimate estimate(Figure figure) {
        OptionalDouble value = whole.value(figure);
        long units = whole.units(figure);
        if (value.isEmpty()) {
            return Estimate.missing(units, METHOD, whole.nothing());
        }
        Interval interval = intervals.get(figure);
        if (interval == null) {
            return Estimate.pointOnly(
                    value.getAsDouble(), units, METHOD, "too few cows: most resamples cannot carry the figure");
        }
        if (interval.high() <= interval.low()) {
            return Estimate.pointOnly(
                    value.getAsDouble(), units, METHOD, "none or all: every resample gives the same figure");
        }
        return Estimate.of(value.getAsDouble(), interval.low(), interval.high(), units, METHOD);
    }

    /** One is missing where over a tenth of the resamples cannot be used for it. */
    private Map<Figure, Interval> draw(int cutLevel, double level, long seed) {
        Map<Figure, DoubleStream.Builder> drawn = new EnumMap<>(Figure.class);
        for (Figure figure : Figure.values()) {
            drawn.put(figure, DoubleStream.builder());
        }
        SplittableRandom random = new SplittableRandom(seed);
        int cows = start.length - 1;
        for (int b = 0; b < RESAMPLES; b++) {
            long[] states = new long[size];
            for (int i = 0; i < cows; i++) {
                int cow = random.nextInt(cows);
                for (int e = start[cow]; e < start[cow + 1]; e++) {
                    states[place[e]] += amount[e];
                }
            }
            for (int at = 0; at < size; at += 3) {
                states[at + 1] += states[at + 2];
                states[at] += states[at + 1];
            }
            Optional<VerificationBias> bias = VerificationBias.of(states, cutLevel);
            if (bias.isPresent()) {
                drawn.forEach((figure, values) -> bias.get().value(figure).ifPresent(values::add));
            }
        }
        Map<Figure, Interval> ends = new EnumMap<>(Figure.class);
        drawn.forEach((figure, values) -> {
            double[] sorted = values.build().sorted().toArray();
            if (sorted.length >= LEAST_USABLE_SHARE * RESAMPLES) {
                ends.put(figure, new Interval(quantile(sorted, (1 - level) / 2), quantile(sorted, (1 + level) / 2)));
            }
        });
        return ends;
    }

    static double quantile(double[] sorted, double p) {
        double at = p * (sorted.length - 1);
        int low = (int) Math.floor(at);
        int high = Math.min(low + 1, sorted.length - 1);
        return sorted[low] + (at - low) * (sorted[high] - sorted[low]);
    }
}
