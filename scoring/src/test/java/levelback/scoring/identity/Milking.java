package levelback.scoring.identity;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;

/**
 * A simulated milking with its truth: walkers every few seconds before a camera, a gate whose clock is off and drifts,
 * reads that go missing, come in bursts, swap and stray. The settings {@link #EASY} and {@link #CROWDED} are those of
 * {@code sim} in check-values/scripts/make_identify.py, by another generator of random numbers.
 *
 * @param truth for each pass the tag that was read for her; empty where she walked past unread
 */
record Milking(List<PassSpan> passes, List<GateReading> readings, List<Optional<String>> truth) {

    static final Setting EASY = new Setting("lane-easy", 120).swaps(.03);
    static final Setting CROWDED =
            new Setting("lane-crowded", 120).gaps(1.2, 4).miss(.12).swaps(.08).sigma(.9);
    /** Issue "Lane", goals: 3 % of reads missing, 2 % unread walkers, bursts, jitter within 2 s, 90 s off, 50 ppm. */
    static final Setting GOAL = new Setting("goal", 300)
            .gaps(4, 12)
            .miss(.05)
            .clock(90, 50)
            .sigma(2)
            .evenly()
            .strays(0);

    Milking {
        passes = List.copyOf(passes);
        readings = List.copyOf(readings);
        truth = List.copyOf(truth);
    }

    /** How a milking is drawn; the defaults are those of {@code sim}, without swaps. */
    record Setting(
            String name,
            int cows,
            double gapLow,
            double gapHigh,
            double offsetS,
            double driftPpm,
            double sigma,
            boolean uniform,
            double miss,
            double strays,
            double burst,
            double swap,
            double filmed,
            boolean inOrder) {

        Setting(String name, int cows) {
            this(name, cows, 3, 9, 37.4, 180, .6, false, .06, .02, .25, 0, 1, false);
        }

        Setting named(String of) {
            return new Setting(
                    of, cows, gapLow, gapHigh, offsetS, driftPpm, sigma, uniform, miss, strays, burst, swap, filmed,
                    inOrder);
        }

        Setting cows(int n) {
            return new Setting(
                    name, n, gapLow, gapHigh, offsetS, driftPpm, sigma, uniform, miss, strays, burst, swap, filmed,
                    inOrder);
        }

        Setting gaps(double low, double high) {
            return new Setting(
                    name, cows, low, high, offsetS, driftPpm, sigma, uniform, miss, strays, burst, swap, filmed,
                    inOrder);
        }

        Setting clock(double s, double ppm) {
            return new Setting(
                    name, cows, gapLow, gapHigh, s, ppm, sigma, uniform, miss, strays, burst, swap, filmed, inOrder);
        }

        /** Standard deviation of a read about its pass; the half width where it is {@link #evenly}. */
        Setting sigma(double s) {
            return new Setting(
                    name, cows, gapLow, gapHigh, offsetS, driftPpm, s, uniform, miss, strays, burst, swap, filmed,
                    inOrder);
        }

        Setting evenly() {
            return new Setting(
                    name, cows, gapLow, gapHigh, offsetS, driftPpm, sigma, true, miss, strays, burst, swap, filmed,
                    inOrder);
        }

        Setting miss(double chance) {
            return new Setting(
                    name, cows, gapLow, gapHigh, offsetS, driftPpm, sigma, uniform, chance, strays, burst, swap, filmed,
                    inOrder);
        }

        /** Reads of animals that walked elsewhere, for each walker. */
        Setting strays(double perCow) {
            return new Setting(
                    name, cows, gapLow, gapHigh, offsetS, driftPpm, sigma, uniform, miss, perCow, burst, swap, filmed,
                    inOrder);
        }

        Setting swaps(double chance) {
            return new Setting(
                    name, cows, gapLow, gapHigh, offsetS, driftPpm, sigma, uniform, miss, strays, burst, chance, filmed,
                    inOrder);
        }

        /** Share of the walkers whose pass is in the table. */
        Setting filmed(double share) {
            return new Setting(
                    name, cows, gapLow, gapHigh, offsetS, driftPpm, sigma, uniform, miss, strays, burst, swap, share,
                    inOrder);
        }

        /** Nobody overtakes: the reads come in the order of the walkers. */
        Setting inOrder(boolean kept) {
            return new Setting(
                    name, cows, gapLow, gapHigh, offsetS, driftPpm, sigma, uniform, miss, strays, burst, swap, filmed,
                    kept);
        }
    }

    private record Raw(double timeS, String tag) {}

    static Milking of(Setting of, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Instant start = Instant.parse("2026-03-14T05:30:00Z");
        List<PassSpan> passes = new ArrayList<>();
        List<Optional<String>> truth = new ArrayList<>();
        List<Raw> reads = new ArrayList<>();
        double t = 0;
        double before = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < of.cows(); i++) {
            t += of.gapLow() + (of.gapHigh() - of.gapLow()) * random.nextDouble();
            double width = 1.5 + 1.5 * random.nextDouble();
            String tag = "276%012d".formatted(random.nextLong(1_000_000_000L));
            boolean filmed = random.nextDouble() < of.filmed();
            boolean read = random.nextDouble() >= of.miss();
            if (filmed) {
                passes.add(new PassSpan("p" + (i + 1), at(start, t - width / 2), at(start, t + width / 2)));
                truth.add(read ? Optional.of(tag) : Optional.empty());
            }
            if (!read) {
                continue;
            }
            double expected = t + of.offsetS() + of.driftPpm() * 1e-6 * t;
            double r = expected + jitter(of, random);
            for (int tries = 0; of.inOrder() && r <= before && tries < 100; tries++) {
                r = expected + jitter(of, random);
            }
            before = Math.max(before, r);
            reads.add(new Raw(r, tag));
            while (random.nextDouble() < of.burst()) {
                r += .05 + 1.15 * random.nextDouble();
                reads.add(new Raw(r, tag));
            }
        }
        for (int i = 0; i + 1 < reads.size(); i++) {
            Raw one = reads.get(i);
            Raw two = reads.get(i + 1);
            if (random.nextDouble() < of.swap() && !one.tag().equals(two.tag())) {
                reads.set(i, new Raw(two.timeS(), one.tag()));
                reads.set(i + 1, new Raw(one.timeS(), two.tag()));
            }
        }
        double strays = of.strays() * of.cows();
        // Poisson: the count of unit exponentials within its mean.
        for (double sum = -Math.log(1 - random.nextDouble()); sum < strays; sum -= Math.log(1 - random.nextDouble())) {
            reads.add(new Raw(
                    t * random.nextDouble() + of.offsetS(), "276%012d".formatted(random.nextLong(1_000_000_000L))));
        }
        reads.sort(Comparator.comparingDouble(Raw::timeS));
        List<GateReading> readings = reads.stream()
                .map(r -> new GateReading(at(start, r.timeS()), r.tag(), "exit-1"))
                .toList();
        return new Milking(passes, readings, truth);
    }

    private static double jitter(Setting of, SplittableRandom random) {
        return of.uniform() ? of.sigma() * (2 * random.nextDouble() - 1) : of.sigma() * random.nextGaussian();
    }

    private static Instant at(Instant start, double s) {
        return start.plus(Duration.ofMillis(Math.round(1000 * s)));
    }
}
