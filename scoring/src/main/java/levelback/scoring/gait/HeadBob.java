package levelback.scoring.gait;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import levelback.scoring.value.Estimate;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * The head bob.
 *
 * @param peakToPeakM highest minus lowest of the periodic part of the poll's height (relative to the withers where
 *     marked), fitted by least squares with a straight line plus the first two harmonics of the LH stride; without
 *     strides highest minus lowest after the line's removal
 */
public record HeadBob(Estimate peakToPeakM) {

    private static final int STEPS = 3600;

    /** @param strideTimeS LH stride time; not a number where there is no stride */
    static HeadBob of(List<BodyMark> marks, double strideTimeS, String whoseStride, double level) {
        Map<Double, Double> withers = new TreeMap<>();
        Map<Double, Double> poll = new TreeMap<>();
        for (BodyMark mark : marks) {
            if (mark.point().equals("withers")) {
                withers.put(mark.timeS(), mark.yM());
            } else if (mark.point().equals("poll")) {
                poll.put(mark.timeS(), mark.yM());
            }
        }
        if (poll.isEmpty()) {
            return new HeadBob(Estimate.missing(0, "head bob", "no marks of the poll"));
        }
        // A withers marked on some frames only would put steps into the height.
        boolean relative = withers.keySet().containsAll(poll.keySet());
        double[] times = poll.keySet().stream().mapToDouble(t -> t).toArray();
        double[] heights = poll.entrySet().stream()
                .mapToDouble(e -> e.getValue() - (relative ? withers.getOrDefault(e.getKey(), 0.0) : 0))
                .toArray();
        String of = relative ? "poll's height over the withers" : "poll's height";
        if (!Double.isNaN(strideTimeS)) {
            Optional<HeadBob> fitted = fitted(times, heights, strideTimeS, of, whoseStride, level);
            if (fitted.isPresent()) {
                return fitted.get();
            }
        }
        return plain(times, heights, of, Double.isNaN(strideTimeS));
    }

    private static Optional<HeadBob> fitted(
            double[] times, double[] heights, double strideTimeS, String of, String whose, double level) {
        double span = times[times.length - 1] - times[0];
        if (times.length < 7 || span < strideTimeS * (1 - 1.5 / times.length)) {
            return Optional.empty();
        }
        double[][] design = new double[times.length][];
        for (int i = 0; i < times.length; i++) {
            double[] wave = wave(2 * Math.PI * (times[i] - times[0]) / strideTimeS);
            design[i] = new double[] {1, (times[i] - times[0]) / span, wave[0], wave[1], wave[2], wave[3]};
        }
        Optional<LeastSquares.Fit> found = LeastSquares.fit(design, heights);
        if (found.isEmpty()) {
            return Optional.empty();
        }
        LeastSquares.Fit fit = found.get();
        double high = Double.NEGATIVE_INFINITY;
        double low = Double.POSITIVE_INFINITY;
        double[] atHigh = wave(0);
        double[] atLow = wave(0);
        for (int i = 0; i < STEPS; i++) {
            double[] wave = wave(2 * Math.PI * i / STEPS);
            double y = 0;
            for (int j = 0; j < 4; j++) {
                y += fit.coefficient(j + 2) * wave[j];
            }
            if (y > high) {
                high = y;
                atHigh = wave;
            }
            if (y < low) {
                low = y;
                atLow = wave;
            }
        }
        // At the extremes the height does not change with their place: the derivatives are those of the waves alone.
        double variance = 0;
        for (int j = 0; j < 4; j++) {
            for (int k = 0; k < 4; k++) {
                variance += (atHigh[j] - atLow[j])
                        * (atHigh[k] - atLow[k])
                        * fit.covariance().getEntry(j + 2, k + 2);
            }
        }
        String method = "least squares of the " + of + ": a straight line and two harmonics of the " + whose
                + "; highest minus lowest of the harmonics; delta method, t interval; the digitising error is in the"
                + " residuals";
        double half = fit.degreesOfFreedom() == 0
                ? Double.NaN
                : Math.sqrt(Math.max(0, variance))
                        * TDistribution.of(fit.degreesOfFreedom()).inverseCumulativeProbability(1 - (1 - level) / 2);
        double bob = high - low;
        return Optional.of(new HeadBob(
                Double.isNaN(half)
                        ? Estimate.pointOnly(bob, times.length, method, "too few marks for an interval")
                        : Estimate.of(bob, Math.max(0, bob - half), bob + half, times.length, method)));
    }

    private static HeadBob plain(double[] times, double[] heights, String of, boolean noStrides) {
        String method = "highest minus lowest of the " + of + " after a straight line is taken out ("
                + (noStrides ? "without strides" : "fewer marks than a stride needs")
                + "; too large by the noise of the marks)";
        if (times.length < 3) {
            return new HeadBob(Estimate.missing(times.length, method, "fewer than three marks of the poll"));
        }
        double[][] design = new double[times.length][];
        for (int i = 0; i < times.length; i++) {
            design[i] = new double[] {1, times[i] - times[0]};
        }
        OptionalDouble range = LeastSquares.fit(design, heights)
                .map(fit -> {
                    double high = Double.NEGATIVE_INFINITY;
                    double low = Double.POSITIVE_INFINITY;
                    for (int i = 0; i < times.length; i++) {
                        double rest = heights[i] - fit.coefficient(0) - fit.coefficient(1) * design[i][1];
                        high = Math.max(high, rest);
                        low = Math.min(low, rest);
                    }
                    return OptionalDouble.of(high - low);
                })
                .orElse(OptionalDouble.empty());
        return new HeadBob(
                range.isEmpty()
                        ? Estimate.missing(times.length, method, "the marks of the poll allow no straight line")
                        : Estimate.pointOnly(
                                range.getAsDouble(), times.length, method, "highest minus lowest has no interval"));
    }

    private static double[] wave(double angle) {
        return new double[] {Math.cos(angle), Math.sin(angle), Math.cos(2 * angle), Math.sin(2 * angle)};
    }
}
