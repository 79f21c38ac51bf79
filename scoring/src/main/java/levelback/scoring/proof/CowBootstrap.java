package levelback.scoring.proof;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.DoubleStream;
import levelback.scoring.proof.VerificationBias.Figure;
import levelback.scoring.value.Interval;

/**
 * Percentile intervals of the corrected figures by drawing whole cows with replacement: what repeats of a cow share is
 * drawn with her.
 *
 * <p>Reference: Efron & Tibshirani (1993), An Introduction to the Bootstrap, ch. 13; Field & Welsh (2007), Bootstrapping
 * clustered data, J R Stat Soc B 69:369. Quantiles as in R's type 7.
 */
final class CowBootstrap {

    /** Resamples drawn. */
    static final int RESAMPLES = 2000;

    /** Above so many cows the linearised variance is as good, and drawing them would take too long. */
    static final int MOST_COWS = 5000;

    private static final double LEAST_USABLE_SHARE = 0.9;

    private final double[] levels;
    private final List<int[]> cows = new ArrayList<>();

    /**
     * @param scored sorted by cow
     * @param byScore their levels
     */
    CowBootstrap(List<Observation> scored, List<ProofResult.AtScore> byScore) {
        levels = byScore.stream().mapToDouble(ProofResult.AtScore::score).toArray();
        int[] counts = new int[3 * levels.length];
        for (int i = 0; i < scored.size(); i++) {
            Observation o = scored.get(i);
            int at = 3 * Arrays.binarySearch(levels, o.score());
            counts[at]++;
            counts[at + 1] += o.isLifted() ? 1 : 0;
            counts[at + 2] += o.hasLesion() ? 1 : 0;
            if (i + 1 == scored.size() || !scored.get(i + 1).cow().equals(o.cow())) {
                cows.add(counts);
                counts = new int[3 * levels.length];
            }
        }
        // By what they hold, not by their names: the same herd under other numbers draws the same.
        cows.sort(Arrays::compare);
    }

    /** How many cows there are. */
    int cows() {
        return cows.size();
    }

    /** The intervals; one is missing where over a tenth of the resamples cannot be used for it. */
    Map<Figure, Interval> intervals(double cut, double level, long seed) {
        Map<Figure, DoubleStream.Builder> drawn = new EnumMap<>(Figure.class);
        for (Figure figure : Figure.values()) {
            drawn.put(figure, DoubleStream.builder());
        }
        SplittableRandom random = new SplittableRandom(seed);
        for (int b = 0; b < RESAMPLES; b++) {
            long[] sum = new long[3 * levels.length];
            for (int i = 0; i < cows.size(); i++) {
                int[] cow = cows.get(random.nextInt(cows.size()));
                for (int k = 0; k < sum.length; k++) {
                    sum[k] += cow[k];
                }
            }
            Optional<VerificationBias> bias = VerificationBias.of(levelsOf(sum), cut);
            if (bias.isPresent()) {
                drawn.forEach((figure, values) -> bias.get().value(figure).ifPresent(values::add));
            }
        }
        Map<Figure, Interval> intervals = new EnumMap<>(Figure.class);
        drawn.forEach((figure, values) -> {
            double[] sorted = values.build().sorted().toArray();
            if (sorted.length >= LEAST_USABLE_SHARE * RESAMPLES) {
                intervals.put(
                        figure, new Interval(quantile(sorted, (1 - level) / 2), quantile(sorted, (1 + level) / 2)));
            }
        });
        return intervals;
    }

    private List<ProofResult.AtScore> levelsOf(long[] sum) {
        List<ProofResult.AtScore> list = new ArrayList<>();
        for (int i = 0; i < levels.length; i++) {
            if (sum[3 * i] > 0) {
                list.add(new ProofResult.AtScore(levels[i], sum[3 * i], sum[3 * i + 1], sum[3 * i + 2]));
            }
        }
        return list;
    }

    private static double quantile(double[] sorted, double p) {
        double at = p * (sorted.length - 1);
        int low = (int) Math.floor(at);
        int high = Math.min(low + 1, sorted.length - 1);
        return sorted[low] + (at - low) * (sorted[high] - sorted[low]);
    }
}
