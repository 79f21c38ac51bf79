package levelback.scoring.bench;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.function.LongFunction;
import java.util.stream.LongStream;
import levelback.scoring.value.Estimate;
import levelback.scoring.value.Interval;

/**
 * How often an interval holds the truth, by simulation: one row of the table of coverage.
 *
 * <p>A run draws a data set from a known truth and gives the estimate made of it. Covered: {@code low ≤ truth ≤ high}, with
 * 1e-12 of slack for rounding. Missed low: the interval lies wholly below the truth; missed high: wholly above. A run
 * whose estimate has no interval counts as that and enters neither the covered share nor the mean width, and the table
 * shows how many there were.
 *
 * <p>By hand, after {@code mvn -Dfast -DskipTests package}: {@code java -cp
 * scoring/target/classes:scoring/target/test-classes:player/target/lib/* levelback.scoring.bench.Coverage}.
 *
 * @param interval which interval
 * @param setting what was simulated
 * @param runs data sets drawn
 * @param covered runs whose interval held the truth
 * @param missedLow runs whose interval lay below the truth
 * @param missedHigh runs whose interval lay above the truth
 * @param withoutInterval runs that gave no interval
 * @param meanWidth mean of high minus low over the runs that gave an interval; NaN where none did
 */
public record Coverage(
        String interval,
        String setting,
        int runs,
        int covered,
        int missedLow,
        int missedHigh,
        int withoutInterval,
        double meanWidth) {

    private static final double SLACK = 1e-12;

    /**
     * One data set drawn.
     *
     * @param truth what the estimate should hold
     * @param estimate what was made of the data
     */
    public record Run(double truth, Estimate estimate) {}

    /**
     * Simulates on all cores of the common pool. Run {@code i} always gets the same seed, whatever the number of cores,
     * and seeds of different runs are far apart.
     *
     * @param runs at least 1; 2,000 gives the share to within half a point
     * @param simulate from a seed to a run; called from several threads at once
     * @throws IllegalArgumentException if {@code runs} is under 1
     */
    public static Coverage of(String interval, String setting, int runs, LongFunction<Run> simulate) {
        if (runs < 1) {
            throw new IllegalArgumentException("a simulation of " + runs + " runs");
        }
        Tally tally = LongStream.range(0, runs)
                .parallel()
                .map(run -> new SplittableRandom(run).nextLong())
                .mapToObj(seed -> Tally.of(simulate.apply(seed)))
                .reduce(Tally.NONE, Tally::plus);
        int judged = runs - tally.without;
        return new Coverage(
                interval,
                setting,
                runs,
                tally.covered,
                tally.low,
                tally.high,
                tally.without,
                judged == 0 ? Double.NaN : tally.width / judged);
    }

    /** Covered share of the runs that gave an interval; NaN where none did. */
    public double share() {
        int judged = runs - withoutInterval;
        return judged == 0 ? Double.NaN : (double) covered / judged;
    }

    /** Monte-Carlo standard error of the share: √(share·(1 − share)/runs with an interval). */
    public double standardError() {
        return Math.sqrt(share() * (1 - share()) / (runs - withoutInterval));
    }

    /** Prints rows as a Markdown table, in the order given. */
    public static void print(PrintWriter to, List<Coverage> rows) {
        to.println("| interval | setting | runs | covered % (± s.e.) | missed low % | missed high % | no interval"
                + " | mean width |");
        to.println("|---|---|---:|---:|---:|---:|---:|---:|");
        for (Coverage row : rows) {
            int judged = Math.max(1, row.runs - row.withoutInterval);
            to.println(String.format(
                    Locale.ROOT,
                    "| %s | %s | %d | %.1f ± %.1f | %.1f | %.1f | %d | %.4g |",
                    row.interval,
                    row.setting,
                    row.runs,
                    100 * row.share(),
                    100 * row.standardError(),
                    100.0 * row.missedLow / judged,
                    100.0 * row.missedHigh / judged,
                    row.withoutInterval,
                    row.meanWidth));
        }
        to.flush();
    }

    /** Prints rows on standard output. */
    public static void print(List<Coverage> rows) {
        print(new PrintWriter(System.out, false, StandardCharsets.UTF_8), rows);
    }

    /** A known case: the Wald interval of a proportion, which covers far less than it promises. */
    public static void main(String[] args) {
        print(List.of(wald(30, .05, 2_000), wald(30, .5, 2_000), wald(592, .005, 2_000)));
    }

    static Coverage wald(int n, double p, int runs) {
        return of("Wald", "n " + n + ", p " + p, runs, seed -> {
            SplittableRandom random = new SplittableRandom(seed);
            int x = 0;
            for (int i = 0; i < n; i++) {
                x += random.nextDouble() < p ? 1 : 0;
            }
            double share = (double) x / n;
            double half = 1.959963984540054 * Math.sqrt(share * (1 - share) / n);
            return new Run(p, Estimate.of(share, share - half, share + half, n, "Wald"));
        });
    }

    private record Tally(int covered, int low, int high, int without, double width) {

        static final Tally NONE = new Tally(0, 0, 0, 0, 0);

        static Tally of(Run run) {
            if (run.estimate().interval().isEmpty()) {
                return new Tally(0, 0, 0, 1, 0);
            }
            Interval i = run.estimate().interval().get();
            double width = i.high() - i.low();
            if (i.high() + SLACK < run.truth()) {
                return new Tally(0, 1, 0, 0, width);
            }
            if (i.low() - SLACK > run.truth()) {
                return new Tally(0, 0, 1, 0, width);
            }
            return new Tally(1, 0, 0, 0, width);
        }

        Tally plus(Tally other) {
            return new Tally(
                    covered + other.covered,
                    low + other.low,
                    high + other.high,
                    without + other.without,
                    width + other.width);
        }
    }
}
