package levelback.scoring.gait;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.ToIntFunction;
import levelback.scoring.value.Estimate;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * Means of readings, and smooth functions of several means, with their uncertainty by the GUM (JCGM 100:2008).
 *
 * <p>For f(m₁, m₂, …), means of nⱼ readings, u² = s² part + propagated part. The s² part: each reading has the influence
 * (∂f/∂mⱼ)(x − mⱼ)/nⱼ; influences are summed within a round of the legs, zₖ, and u² = K/(K−1)·Σzₖ² over K rounds, which
 * is s²/n where every round holds one reading. The propagated part: ∂f/∂tᵢ of every event is summed over all readings
 * that use it before it is squared, so an event shared by two strides counts once; u² = u_t²·Σ(∂f/∂tᵢ)² +
 * u_x²·Σ(∂f/∂xᵢ)² + what the calibration says of the whole. The interval takes t with the effective degrees of freedom
 * of Welch and Satterthwaite (GUM G.4.1), K−1 for the first part and none wanting for the rest.
 *
 * <p>Over all four legs strides of one round reach into the next, and u² takes the covariance of neighbouring rounds in,
 * where it is positive: Newey and West 1987 doi:10.2307/1913610 (from memory) with one lag of full weight. Simulated
 * coverage of 95 % intervals ({@code GaitCoverage}): of the means over all legs 91 to 94 % for stride time, length and speed
 * (87 to 92 % without the covariance), 93 to 98 % for stance and swing, over 97 % for the duty factor; of one leg 94 to
 * 98 %. With two strides a leg times cover 82 to 90 %: walks so short say little, and the page should ask for more.
 *
 * <p>Times read from frames carry the frame's error in s² already; adding the propagated part on top, as the definition
 * asks, then errs on the wide side (GUM 4.3.10).
 */
final class MeanFigure {

    /**
     * A mean in a combination.
     *
     * @param readings what it is the mean of; not empty
     * @param derivative of the combination by this mean
     */
    record Term(List<Reading> readings, double derivative) {
        Term {
            readings = List.copyOf(readings);
        }

        static double mean(List<Reading> readings) {
            return readings.stream().mapToDouble(Reading::value).sum() / readings.size();
        }
    }

    /**
     * What is known of a combination's error.
     *
     * @param spread by rounds; NaN from one round
     * @param rounds how many rounds
     */
    record Parts(double spread, int rounds, double timing, double digitising, double calibration) {

        double propagated() {
            return Math.sqrt(timing * timing + digitising * digitising + calibration * calibration);
        }

        double combined() {
            return Double.isNaN(spread) ? propagated() : Math.hypot(spread, propagated());
        }

        /** Effective degrees of freedom (GUM G.2b); infinite without a spread. */
        double degreesOfFreedom() {
            return Double.isNaN(spread) || spread == 0
                    ? Double.POSITIVE_INFINITY
                    : (rounds - 1) * Math.pow(combined() / spread, 4);
        }
    }

    private final Walk walk;
    private final GaitQuestion question;

    MeanFigure(Walk walk, GaitQuestion question) {
        this.walk = walk;
        this.question = question;
    }

    /** The mean of readings, each taken as its own round. */
    GaitFigure ofOneLeg(List<Reading> readings, String unit, String whyNone) {
        // Two readings of one leg or side never begin at the same time.
        Map<Double, Integer> own = new HashMap<>();
        readings.forEach(r -> own.putIfAbsent(r.fromS(), own.size()));
        return of(readings, r -> own.getOrDefault(r.fromS(), -1), false, unit, "s over " + unit, whyNone);
    }

    /** The mean of readings of several legs. */
    GaitFigure ofAllLegs(List<Reading> readings, Rounds rounds, String unit, String whyNone) {
        return of(
                readings,
                r -> rounds.at(r.fromS()),
                true,
                unit,
                "s over rounds of the legs and their neighbours",
                whyNone);
    }

    private GaitFigure of(
            List<Reading> readings,
            ToIntFunction<Reading> round,
            boolean neighbours,
            String unit,
            String spread,
            String whyNone) {
        int n = readings.size();
        if (n == 0) {
            return new GaitFigure(Estimate.missing(0, "mean over " + unit, whyNone), Double.NaN, 0, 0, 0);
        }
        double mean = Term.mean(readings);
        Parts parts = parts(List.of(new Term(readings, 1)), round, neighbours);
        String method = "mean over " + unit + "; " + method(parts, spread);
        return new GaitFigure(
                interval(mean, n, parts, method),
                parts.spread(),
                parts.timing(),
                parts.digitising(),
                parts.calibration());
    }

    private Estimate interval(double value, long n, Parts parts, String method) {
        if (Double.isNaN(parts.spread()) && !question.knowsMeasurement()) {
            return Estimate.pointOnly(
                    value, n, method, "one round of the legs does not show how she varies; two or more are needed");
        }
        double half = quantile(parts) * parts.combined();
        return Estimate.of(value, value - half, value + half, n, method);
    }

    /** The factor by which the combined standard uncertainty is widened, two-sided at the level asked. */
    double quantile(Parts parts) {
        double p = 1 - (1 - question.level()) / 2;
        double df = parts.degreesOfFreedom();
        return df > 1e6
                ? NormalDistribution.of(0, 1).inverseCumulativeProbability(p)
                : TDistribution.of(df).inverseCumulativeProbability(p);
    }

    /** The parts of the uncertainty of a smooth function of means, rounds taken as independent. */
    Parts parts(List<Term> terms, ToIntFunction<Reading> round) {
        return parts(terms, round, false);
    }

    private Parts parts(List<Term> terms, ToIntFunction<Reading> round, boolean neighbours) {
        Map<Integer, Double> influence = new HashMap<>();
        double[] byTime = new double[walk.size()];
        double[] byX = new double[walk.size()];
        for (Term term : terms) {
            double mean = Term.mean(term.readings());
            double weight = term.derivative() / term.readings().size();
            for (Reading reading : term.readings()) {
                influence.merge(round.applyAsInt(reading), weight * (reading.value() - mean), Double::sum);
                for (Reading.Part part : reading.parts()) {
                    byTime[part.event()] += weight * part.byTime();
                    byX[part.event()] += weight * part.byX();
                }
            }
        }
        int k = influence.size();
        double squares =
                influence.values().stream().mapToDouble(z -> z * z).sorted().sum();
        double shared = 0;
        for (Map.Entry<Integer, Double> one : influence.entrySet()) {
            shared += one.getValue() * influence.getOrDefault(one.getKey() + 1, 0.0);
        }
        // A stride of one leg reaches into the next round of another: neighbours vary together.
        // Taking the mean off makes neighbours look opposed by one part in k; that is put back.
        double together = neighbours ? 2 * Math.max(0, shared + squares * (k - 1) / k / k) : 0;
        double spread = k < 2 ? Double.NaN : Math.sqrt((squares + together) * k / (k - 1));
        boolean places = java.util.Arrays.stream(byX).anyMatch(d -> d != 0);
        return new Parts(
                spread,
                k,
                question.eventS() * norm(byTime),
                question.digitisingM().orElse(0) * norm(byX),
                places && question.calibration().isPresent()
                        ? question.calibration().get().standardUncertainty(byX)
                        : 0);
    }

    /** What stands behind an interval, in words. */
    String method(Parts parts, String spread) {
        StringBuilder words = new StringBuilder();
        if (Double.isNaN(parts.spread())) {
            words.append(
                    question.knowsMeasurement()
                            ? "one round: the interval is that of the measurement alone"
                            : "no interval from one round");
        } else {
            words.append("u from ").append(spread);
        }
        if (parts.timing() > 0) {
            words.append(String.format(
                    Locale.ROOT,
                    " + frame period 1/(%s·√12) an event, shared events once",
                    plain(question.frameRateHz().orElse(0))));
        }
        if (parts.digitising() > 0) {
            words.append(String.format(
                    Locale.ROOT,
                    " + digitising %s m a print",
                    plain(question.digitisingM().orElse(0))));
        }
        if (parts.calibration() > 0) {
            words.append(" + calibration, shared by all prints");
        }
        if (parts.propagated() > 0) {
            words.append(", propagated by the GUM");
        }
        double df = parts.degreesOfFreedom();
        words.append(
                Double.isNaN(parts.spread()) && !question.knowsMeasurement()
                        ? ""
                        : df > 1e6
                                ? "; normal interval"
                                : String.format(Locale.ROOT, "; t interval, %.1f effective df", df));
        return words.toString();
    }

    private static String plain(double value) {
        return value == Math.rint(value) && Math.abs(value) < 1e9
                ? String.valueOf((long) value)
                : String.valueOf(value);
    }

    private static double norm(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value * value;
        }
        return Math.sqrt(sum);
    }
}
