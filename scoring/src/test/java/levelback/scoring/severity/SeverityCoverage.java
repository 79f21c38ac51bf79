package levelback.scoring.severity;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import levelback.scoring.bench.Coverage;

/** Coverage of the severity's intervals, by hand: shift and latent of the hardest scorer, panels drawn from the cumulative-link model. */
final class SeverityCoverage {

    private static final double[] THRESHOLDS = {-2, -0.5, 1, 3};

    private SeverityCoverage() {}

    /** Prints the table. */
    public static void main(String[] arguments) {
        int runs = arguments.length == 0 ? 2_000 : Integer.parseInt(arguments[0]);
        List<Coverage> rows = new ArrayList<>();
        double[][] settings = {{20, 3, 0, 2}, {60, 5, 0, 2}, {60, 5, 0.3, 2}, {60, 2, 0, 1}, {200, 5, 0.2, 1}};
        for (double[] s : settings) {
            String setting = String.format(
                    "%.0f clips, %.0f scorers, %.0f %% missing, clip sd %.0f", s[0], s[1], 100 * s[2], s[3]);
            double step = truthOfShift((int) s[1], s[3]);
            rows.add(Coverage.of(
                    "shift",
                    setting,
                    runs,
                    seed -> new Coverage.Run(step, last(AdditiveShift.of(draw(s, seed), 0.95)))));
            rows.add(Coverage.of(
                    "latent",
                    setting,
                    runs,
                    seed -> new Coverage.Run(
                            1,
                            last(Severity.of(draw(s, seed), 0.95).stream()
                                    .map(ScorerSeverity::latent)
                                    .toList()))));
        }
        Coverage.print(rows);
    }

    private static <T> T last(List<T> list) {
        return list.get(list.size() - 1);
    }

    private static double effect(int scorer, int scorers) {
        return -1 + 2.0 * scorer / (scorers - 1);
    }

    /** The last scorer's expected score less the panel's, by a fine grid over the clips. */
    private static double truthOfShift(int scorers, double sd) {
        double shift = 0;
        double all = 0;
        for (double z = -8; z <= 8; z += 0.001) {
            double weight = Math.exp(-z * z / 2);
            double mean = 0;
            double hers = 0;
            for (int s = 0; s < scorers; s++) {
                hers = 0;
                for (double threshold : THRESHOLDS) {
                    hers += 1 / (1 + Math.exp(threshold - effect(s, scorers) - sd * z));
                }
                mean += hers / scorers;
            }
            shift += weight * (hers - mean);
            all += weight;
        }
        return shift / all;
    }

    private static Panel draw(double[] setting, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        int clips = (int) setting[0];
        int scorers = (int) setting[1];
        int[] clip = new int[clips * scorers];
        int[] scorer = new int[clips * scorers];
        int[] level = new int[clips * scorers];
        int n = 0;
        for (int c = 0; c < clips; c++) {
            double gait = setting[3] * random.nextGaussian();
            for (int s = 0; s < scorers; s++) {
                double chance = random.nextDouble();
                if (random.nextDouble() >= setting[2]) {
                    double latent = gait + effect(s, scorers) + Math.log(chance / (1 - chance));
                    clip[n] = c;
                    scorer[n] = s;
                    level[n++] = (int)
                            Arrays.stream(THRESHOLDS).filter(t -> latent > t).count();
                }
            }
        }
        return new Panel(
                IntStream.range(0, scorers).mapToObj(s -> "scorer-" + s).toList(),
                List.of(0.0, 1.0, 2.0, 3.0, 4.0),
                clips,
                Arrays.copyOf(clip, n),
                Arrays.copyOf(scorer, n),
                Arrays.copyOf(level, n));
    }
}
