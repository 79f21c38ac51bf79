package levelback.scoring.herd;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import levelback.scoring.bench.Coverage;
import levelback.scoring.proof.Proportions;
import levelback.scoring.proof.ScoreRow;

/** Coverage of the intervals of the herd figures, 2,000 runs a setting; run by hand like {@link Coverage}. */
final class HerdCoverage {

    private static final int RUNS = 2_000;
    private static final LocalDate FIRST = LocalDate.of(2026, 3, 2);
    private static final double DAYS_BETWEEN = 14;

    private HerdCoverage() {}

    /** Prints the table. */
    public static void main(String[] args) {
        List<Coverage> rows = new ArrayList<>();
        rows.add(wilson(50, .1));
        rows.add(wilson(120, .3));
        rows.add(wilson(300, .25));
        rows.add(finite(60, 30, 18));
        rows.add(finite(200, 66, 50));
        rows.add(finite(200, 150, 50));
        rows.add(finite(1_000, 90, 250));
        rows.add(median(20, .03, 60));
        rows.add(median(50, .03, 60));
        rows.add(median(100, .03, 60));
        rows.add(median(300, .03, 60));
        rows.add(rate(60, 8, .1, 0));
        rows.add(rate(150, 8, .1, 0));
        rows.add(rate(150, 26, .1, 0));
        rows.add(rate(150, 8, .1, 1));
        rows.add(rate(400, 26, .1, 1));
        Coverage.print(rows);
    }

    private static Coverage wilson(int n, double p) {
        return Coverage.of("Wilson", "n " + n + ", p " + p, RUNS, seed -> {
            SplittableRandom random = new SplittableRandom(seed);
            long x = 0;
            for (int i = 0; i < n; i++) {
                x += random.nextDouble() < p ? 1 : 0;
            }
            return new Coverage.Run(p, Proportions.estimate(x, n, .95, ""));
        });
    }

    /** Scored without replacement from a herd with so many lame cows. */
    private static Coverage finite(int herd, int scored, int lame) {
        String setting = scored + " of " + herd + " scored, " + lame + " lame";
        return Coverage.of("finite population", setting, RUNS, seed -> {
            SplittableRandom random = new SplittableRandom(seed);
            int left = lame;
            for (int i = 0; i < scored; i++) {
                left -= random.nextInt(herd - i) < left ? 1 : 0;
            }
            return new Coverage.Run((double) lame / herd, FinitePopulation.share(lame - left, scored, herd, .95));
        });
    }

    /** Geometric days to treatment, censored evenly over the time on record. */
    private static Coverage median(int cows, double chanceADay, int longest) {
        double truth = Math.ceil(Math.log(.5) / Math.log(1 - chanceADay)) - 1;
        String setting = cows + " cows, median " + (long) truth + " days, censored 0-" + longest;
        return Coverage.of("Kaplan-Meier median", setting, RUNS, seed -> {
            SplittableRandom random = new SplittableRandom(seed);
            List<Long> days = new ArrayList<>();
            List<Boolean> treated = new ArrayList<>();
            for (int i = 0; i < cows; i++) {
                long day = (long) (Math.log(1 - random.nextDouble()) / Math.log(1 - chanceADay));
                long end = random.nextInt(longest + 1);
                days.add(Math.min(day, end));
                treated.add(day <= end);
            }
            return new Coverage.Run(
                    truth, DaysToTreatment.of(days, treated, .95).median());
        });
    }

    /**
     * A herd whose cows go lame with a chance of their own at every visit and recover with chance .4.
     *
     * @param chance mean chance of a sound cow at the next visit
     * @param spread 0: all alike; 1: chances even between 0 and twice the mean
     */
    private static Coverage rate(int cows, int visits, double chance, double spread) {
        double truth = trueRate(visits, chance, spread);
        String setting = cows + " cows, " + visits + " visits, " + (spread > 0 ? "cows differ" : "cows alike");
        return Coverage.of(
                "new case rate",
                setting,
                RUNS,
                seed -> new Coverage.Run(
                        truth,
                        NewCases.of(herd(seed, cows, visits, chance, spread), 2, .95)
                                .ratePer30Days()));
    }

    private static double trueRate(int visits, double chance, double spread) {
        NewCases many = NewCases.of(herd(77, 400_000 / visits, visits, chance, spread), 2, .95);
        return spread <= 0
                ? 30 * chance / DAYS_BETWEEN
                : many.ratePer30Days().value().orElseThrow();
    }

    private static List<CowHistory> herd(long seed, int cows, int visits, double chance, double spread) {
        SplittableRandom random = new SplittableRandom(seed);
        List<ScoreRow> rows = new ArrayList<>();
        for (int c = 0; c < cows; c++) {
            double hers = chance * (1 + spread * (2 * random.nextDouble() - 1));
            boolean lame = random.nextDouble() < .3;
            for (int v = 0; v < visits; v++) {
                lame = lame ? random.nextDouble() >= .4 : random.nextDouble() < hers;
                rows.add(new ScoreRow(
                        "c" + c, FIRST.plusDays(v * (long) DAYS_BETWEEN), lame ? 2 : 0, "", Optional.empty()));
            }
        }
        return CowHistory.of(rows);
    }
}
