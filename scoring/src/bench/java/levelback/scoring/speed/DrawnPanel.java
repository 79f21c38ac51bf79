package levelback.scoring.speed;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import levelback.scoring.severity.Panel;

/** Panels drawn from the cumulative-link model: clips spread with a standard deviation of 2, five levels. */
final class DrawnPanel {

    private static final double[] THRESHOLDS = {-2, -0.5, 1, 3};

    private DrawnPanel() {}

    static Panel empty() {
        return new Panel(List.of(), List.of(), 0, new int[0], new int[0], new int[0]);
    }

    /** Scorers lie evenly from −1 to 1; each cell is missing with the chance given. */
    static Panel of(int clips, int scorers, double missing, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        int[] clip = new int[clips * scorers];
        int[] scorer = new int[clips * scorers];
        int[] level = new int[clips * scorers];
        int n = 0;
        for (int c = 0; c < clips; c++) {
            double gait = 2 * random.nextGaussian();
            for (int s = 0; s < scorers; s++) {
                if (random.nextDouble() < missing) {
                    continue;
                }
                double chance = random.nextDouble();
                double latent =
                        gait + (scorers == 1 ? 0 : -1 + 2.0 * s / (scorers - 1)) + Math.log(chance / (1 - chance));
                clip[n] = c;
                scorer[n] = s;
                level[n] = (int) Arrays.stream(THRESHOLDS).filter(t -> latent > t).count();
                n++;
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

    /** The panel as a table. */
    static String table(Panel panel) {
        StringBuilder table = new StringBuilder("scorer,clip,score\n");
        for (int i = 0; i < panel.size(); i++) {
            table.append(panel.scorers().get(panel.scorer(i)))
                    .append(",clip-")
                    .append(panel.clip(i))
                    .append(',')
                    .append(panel.value(i))
                    .append('\n');
        }
        return table.toString();
    }
}
