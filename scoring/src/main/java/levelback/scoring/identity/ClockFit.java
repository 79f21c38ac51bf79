package levelback.scoring.identity;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Clock and other parameters estimated from the data: expectation and maximisation from every offset that
 * {@link ClockSearch} puts forward, the one whose log-likelihood gains most over "no read is of any pass" kept. Miss,
 * stray rate and sigma carry weak priors (worth 10 passes at 5 %, a minute without a stray, 4 reads at 0.8 s), so that
 * few passes do not give extremes.
 *
 * @param with the parameters
 * @param alignment the posteriors under them
 * @param logGain natural logarithm of the likelihood over that of no match, less what the search over clocks costs
 * @param offsetSeS standard error of the offset, in seconds
 * @param driftSe standard error of the drift
 */
record ClockFit(AlignmentParameters with, Alignment alignment, double logGain, double offsetSeS, double driftSe) {

    private static final int MOST_CANDIDATES = 6;
    /** So many passes find the clock; a gain of so much for each says that they have. */
    private static final int ENOUGH = 300;

    private static final double PLAINLY = 0.3;
    private static final double PAD_S = 30;
    private static final double DRIFT_PRIOR = 5e-3;

    private record Step(AlignmentParameters with, double offsetSeS, double driftSe) {}

    /** The best fit; empty where no read lies within range of any pass. Both lists ascending. */
    static Optional<ClockFit> of(double[] passes, double[] reads, int[] fixed) {
        int start = Math.min(passes.length, ENOUGH);
        Optional<ClockFit> best = quick(passes, reads, fixed, start);
        if (start < passes.length && (best.isEmpty() || best.get().logGain() < PLAINLY * start)) {
            // The reader may have been switched on late.
            best = quick(passes, reads, fixed, passes.length);
            start = passes.length;
        }
        // A drift is learnt on the first passes before it carries the expected times far from the reads of the last.
        while (best.isPresent() && start < passes.length) {
            start = Math.min(passes.length, 3 * start);
            best = Optional.of(
                    from(best.get().with(), Arrays.copyOf(passes, start), reads, Arrays.copyOf(fixed, start), 6, 6, 6));
        }
        return best.map(b -> {
            ClockFit settled = from(b.with(), passes, reads, fixed, 25, 6, 8);
            double factor = InversionFit.of(settled.with(), passes, reads, fixed);
            int rounds = factor == 1 ? 0 : 6;
            return from(
                    settled.with().withInversionFactor(factor),
                    passes,
                    reads,
                    fixed,
                    rounds,
                    9,
                    Alignment.MOST_READS,
                    Optional.of(settled));
        });
    }

    /** The best of few rounds from every candidate, on the first passes alone. */
    static Optional<ClockFit> quick(double[] passes, double[] reads, int[] fixed, int first) {
        double[] part = Arrays.copyOf(passes, first);
        int[] fixedPart = Arrays.copyOf(fixed, first);
        Optional<ClockFit> best = Optional.empty();
        for (double offset : ClockSearch.candidates(part, reads, MOST_CANDIDATES)) {
            ClockFit fit = from(offset, part, reads, fixedPart, 6, 6, 6);
            if (best.isEmpty() || fit.logGain() > best.get().logGain()) {
                best = Optional.of(fit);
            }
        }
        return best;
    }

    private static ClockFit from(
            double offset, double[] passes, double[] reads, int[] fixed, int rounds, double reach, int most) {
        return from(new AlignmentParameters(offset, 0, 1.5, 0.05, 0.01, 1), passes, reads, fixed, rounds, reach, most);
    }

    private static ClockFit from(
            AlignmentParameters start,
            double[] passes,
            double[] reads,
            int[] fixed,
            int rounds,
            double reach,
            int most) {
        return from(start, passes, reads, fixed, rounds, reach, most, Optional.empty());
    }

    private static ClockFit from(
            AlignmentParameters start,
            double[] passes,
            double[] reads,
            int[] fixed,
            int rounds,
            double reach,
            int most,
            Optional<ClockFit> before) {
        Step step = new Step(
                start,
                before.map(ClockFit::offsetSeS).orElse(0.0),
                before.map(ClockFit::driftSe).orElse(0.0));
        for (int r = 0; r < rounds; r++) {
            Alignment now = Alignment.of(passes, reads, step.with(), fixed, Math.min(reach, 6), Math.min(most, 8));
            Step next = maximise(step.with(), now, passes, reads);
            boolean settled = Math.abs(next.with().offsetS() - step.with().offsetS()) < 1e-4
                    && Math.abs(next.with().sigmaS() - step.with().sigmaS()) < 1e-4;
            step = next;
            if (settled) {
                break;
            }
        }
        Alignment last = Alignment.of(passes, reads, step.with(), fixed, reach, most);
        return new ClockFit(step.with(), last, gain(step, last, passes, reads), step.offsetSeS(), step.driftSe());
    }

    private static Step maximise(AlignmentParameters with, Alignment now, double[] passes, double[] reads) {
        double s0 = 0;
        double s1 = 0;
        double s2 = 0;
        double y0 = 0;
        double y1 = 0;
        double unread = 0;
        List<double[]> pairs = new ArrayList<>();
        for (int i = 0; i < passes.length; i++) {
            unread += now.unread(i);
            double x = passes[i] - passes[0];
            for (int j = now.firstRead(i); j < now.endRead(i); j++) {
                double p = now.probability(i, j);
                if (p > 1e-6) {
                    double y = reads[j] - passes[i];
                    s0 += p;
                    s1 += p * x;
                    s2 += p * x * x;
                    y0 += p * y;
                    y1 += p * x * y;
                    pairs.add(new double[] {p, x, y});
                }
            }
        }
        if (s0 < 1e-6) {
            return new Step(with, Double.MAX_VALUE, Double.MAX_VALUE);
        }
        double meanX = s1 / s0;
        double spread = Math.max(0, s2 - s0 * meanX * meanX);
        double ridge = with.sigmaS() * with.sigmaS() / (DRIFT_PRIOR * DRIFT_PRIOR);
        double drift = (y1 - meanX * y0) / (spread + ridge);
        drift = Math.max(-0.02, Math.min(0.02, drift));
        double offset = y0 / s0 - drift * meanX;
        double square = 4 * 0.8 * 0.8;
        for (double[] pair : pairs) {
            double e = pair[2] - offset - drift * pair[1];
            square += pair[0] * e * e;
        }
        double sigma = Math.max(0.02, Math.sqrt(square / (s0 + 4)));
        double[] span = span(with, passes);
        double inSpan = count(reads, span);
        double miss = (unread + 0.5) / (passes.length + 10.0);
        double stray = (Math.max(0, inSpan - s0) + 0.5) / (span[1] - span[0] + 60);
        double driftSe = sigma / Math.sqrt(spread + ridge);
        double offsetSe = Math.hypot(sigma / Math.sqrt(s0), driftSe * meanX);
        return new Step(
                new AlignmentParameters(offset, drift, sigma, Math.min(miss, 0.95), stray, with.inversionFactor()),
                offsetSe,
                driftSe);
    }

    private static double[] span(AlignmentParameters with, double[] passes) {
        double last = passes[passes.length - 1] - passes[0];
        return new double[] {passes[0] + with.offsetS() - PAD_S, passes[0] + with.expectedReadS(last) + PAD_S};
    }

    private static double count(double[] reads, double[] span) {
        return Arrays.stream(reads).filter(r -> r >= span[0] && r <= span[1]).count();
    }

    private static double gain(Step step, Alignment last, double[] passes, double[] reads) {
        AlignmentParameters with = step.with();
        double[] span = span(with, passes);
        double length = span[1] - span[0];
        double n = count(reads, span);
        double matched = passes.length;
        for (int i = 0; i < passes.length; i++) {
            matched -= last.unread(i);
        }
        // Stray reads outside the span are the same under both.
        double found = last.logEvidence() - (reads.length - n) * Math.log(with.strayPerS()) - with.strayPerS() * length;
        double none = n == 0 ? 0 : n * Math.log(n / length) - n;
        double offset = with.offsetS() / 60;
        double prior = Math.log(0.5 / (60 * Math.PI * (1 + offset * offset)) + 0.5 / (2 * ClockSearch.RANGE_S));
        double width = Math.log(Math.sqrt(2 * Math.PI) * with.sigmaS() / Math.sqrt(Math.max(1, matched)));
        return found - none + prior + width;
    }
}
