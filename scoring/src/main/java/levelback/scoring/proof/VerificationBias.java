package levelback.scoring.proof;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import levelback.scoring.value.Estimate;
import levelback.scoring.value.Interval;
import org.jspecify.annotations.Nullable;

/**
 * The figures of all scored cows where only some were lifted: within one score level the never lifted are taken to be
 * like the lifted.
 *
 * <p>References: Begg & Greenes (1983), Assessment of diagnostic tests when disease verification is subject to selection
 * bias, Biometrics 39:207. Interval: delta method on the logit with multinomial level counts (area: on its own scale).
 * Where cows repeat, whole cows are drawn ({@link CowBootstrap}); with very many of them the linearised residuals are
 * summed over each cow before they are squared, with C/(C-1) and t.
 */
final class VerificationBias {

    /** The assumption in words. */
    static final String ASSUMPTION = "Among observations of one score, being lifted had nothing to do with having a"
            + " lesion; the never lifted are taken to be like the lifted of their score.";

    private static final int NEEDED = 5;

    private static final String ONE_COW = "all of one cow: how cows differ cannot be told from one";

    private static final String METHOD = "Begg and Greenes 1983 by score level, delta method on the logit";
    private static final String METHOD_CLUSTERED = METHOD + ", variance clustered by cow";
    private static final String METHOD_DRAWN = "Begg and Greenes 1983 by score level, bootstrap clustered by cow, "
            + CowBootstrap.RESAMPLES + " resamples, percentile interval";

    /** The figures of the correction. */
    enum Figure {
        SENSITIVITY,
        SPECIFICITY,
        PPV,
        NPV,
        PREVALENCE,
        AUC
    }

    /** A level, or several pooled ones. Mutable while levels are pooled. */
    private static final class Level {
        final boolean positive;
        double scored;
        final double lifted;
        final double withLesion;
        final List<Double> scores = new ArrayList<>();

        Level(ProofResult.AtScore from, boolean positive) {
            this.positive = positive;
            this.scored = from.scored();
            this.lifted = from.lifted();
            this.withLesion = from.withLesion();
            scores.add(from.score());
        }

        double p() {
            return withLesion / lifted;
        }
    }

    private final List<Level> levels;

    private VerificationBias(List<Level> levels) {
        this.levels = levels;
    }

    /** What keeps the correction from being made, in words; empty text where nothing does. */
    static String obstacle(List<ProofResult.AtScore> byScore, double cut) {
        long negative = 0;
        long positive = 0;
        for (ProofResult.AtScore at : byScore) {
            if (at.score() >= cut) {
                positive += at.lifted();
            } else {
                negative += at.lifted();
            }
        }
        if (negative < NEEDED) {
            return "Cannot be estimated: " + negative + " sound-scoring " + (negative == 1 ? "cow" : "cows")
                    + " lifted, " + NEEDED + " needed. Draw control lifts.";
        }
        if (positive < NEEDED) {
            return "Cannot be estimated: " + positive + " lame-scoring " + (positive == 1 ? "cow" : "cows")
                    + " lifted, " + NEEDED + " needed.";
        }
        return "";
    }

    /** Levels with none lifted pooled with their neighbour; empty where {@link #obstacle} has something to say. */
    static Optional<VerificationBias> of(List<ProofResult.AtScore> byScore, double cut) {
        if (!obstacle(byScore, cut).isEmpty()) {
            return Optional.empty();
        }
        List<Level> outward = new ArrayList<>();
        List<Level> pooled = new ArrayList<>();
        for (int i = byScore.size() - 1; i >= 0; i--) {
            if (byScore.get(i).score() < cut) {
                outward.add(new Level(byScore.get(i), false));
            }
        }
        pooled.addAll(pool(outward));
        java.util.Collections.reverse(pooled);
        outward.clear();
        for (ProofResult.AtScore at : byScore) {
            if (at.score() >= cut) {
                outward.add(new Level(at, true));
            }
        }
        pooled.addAll(pool(outward));
        return Optional.of(new VerificationBias(pooled));
    }

    /** One side of the cut, nearest level first: a level with none lifted joins the next nearer, else the next further. */
    private static List<Level> pool(List<Level> outward) {
        List<Level> kept = new ArrayList<>();
        List<Level> waiting = new ArrayList<>();
        for (Level level : outward) {
            if (level.lifted > 0) {
                kept.add(level);
                waiting.forEach(w -> join(level, w));
                waiting.clear();
            } else if (kept.isEmpty()) {
                waiting.add(level);
            } else {
                join(kept.get(kept.size() - 1), level);
            }
        }
        return kept;
    }

    private static void join(Level into, Level empty) {
        into.scored += empty.scored;
        into.scores.addAll(empty.scores);
    }

    /** One figure without its interval; empty where it is nothing over nothing. */
    OptionalDouble value(Figure figure) {
        return switch (figure) {
            case SENSITIVITY -> share(l -> l.scored * l.p(), true);
            case SPECIFICITY -> share(l -> l.scored * (1 - l.p()), false);
            case PPV -> OptionalDouble.of(among(true, true));
            case NPV -> OptionalDouble.of(among(false, true));
            case PREVALENCE -> OptionalDouble.of(among(true, false));
            case AUC -> areaOf(masses(l -> l.scored * l.p()), masses(l -> l.scored * (1 - l.p())));
        };
    }

    /** Share with (or without) a lesion among one side of the cut, or among all. */
    private double among(boolean lesion, boolean oneSide) {
        double total = 0;
        double mass = 0;
        for (Level l : levels) {
            if (!oneSide || l.positive == lesion) {
                total += l.scored;
                mass += l.scored * (lesion ? l.p() : 1 - l.p());
            }
        }
        return Math.min(1, Math.max(0, mass / total));
    }

    private static OptionalDouble areaOf(double[] a, double[] b) {
        double sumA = 0;
        double sumB = 0;
        double area = 0;
        for (int i = 0; i < a.length; i++) {
            area += a[i] * (sumB + b[i] / 2);
            sumA += a[i];
            sumB += b[i];
        }
        return sumA > 0 && sumB > 0 ? OptionalDouble.of(Math.min(1, area / (sumA * sumB))) : OptionalDouble.empty();
    }

    private OptionalDouble share(ToDoubleFunction<Level> mass, boolean positive) {
        double side = 0;
        double all = 0;
        for (Level level : levels) {
            double m = mass.applyAsDouble(level);
            all += m;
            side += level.positive == positive ? m : 0;
        }
        return all > 0 ? OptionalDouble.of(side / all) : OptionalDouble.empty();
    }

    /**
     * All figures.
     *
     * @param scored every observation that counts, sorted by cow
     * @param byScore their levels
     * @param repeated whether a cow comes more than once among them
     */
    ProofResult.Corrected figures(
            List<Observation> scored, List<ProofResult.AtScore> byScore, ProofQuestion question, boolean repeated) {
        if (!repeated) {
            return figures(question.level(), null);
        }
        CowBootstrap bootstrap = new CowBootstrap(scored, byScore);
        if (bootstrap.cows() < 2 || bootstrap.cows() > CowBootstrap.MOST_COWS) {
            return figures(question.level(), new CowResiduals(scored));
        }
        Map<Figure, Interval> intervals = bootstrap.intervals(question.cut(), question.level(), question.seed());
        return new ProofResult.Corrected(
                ASSUMPTION,
                drawn(Figure.SENSITIVITY, intervals),
                drawn(Figure.SPECIFICITY, intervals),
                drawn(Figure.PPV, intervals),
                drawn(Figure.NPV, intervals),
                drawn(Figure.PREVALENCE, intervals),
                drawn(Figure.AUC, intervals));
    }

    private Estimate drawn(Figure figure, Map<Figure, Interval> intervals) {
        OptionalDouble value = value(figure);
        long units = Math.round(levels.stream()
                .filter(l -> figure != Figure.PPV || l.positive)
                .filter(l -> figure != Figure.NPV || !l.positive)
                .mapToDouble(l -> l.scored)
                .sum());
        if (value.isEmpty()) {
            return Estimate.missing(
                    units,
                    METHOD_DRAWN,
                    value(Figure.PREVALENCE).orElse(0) > 0
                            ? "every cow is estimated to have a lesion"
                            : "no lesion is estimated");
        }
        Interval interval = intervals.get(figure);
        if (interval == null || interval.high() <= interval.low()) {
            return Estimate.pointOnly(
                    value.getAsDouble(), units, METHOD_DRAWN, "too few cows: most resamples cannot carry the figure");
        }
        return Estimate.of(value.getAsDouble(), interval.low(), interval.high(), units, METHOD_DRAWN);
    }

    private ProofResult.Corrected figures(double level, @Nullable CowResiduals residuals) {
        double[] lesion = masses(l -> l.scored * l.p());
        double[] clean = masses(l -> l.scored * (1 - l.p()));
        return new ProofResult.Corrected(
                ASSUMPTION,
                shareOf(lesion, true, level, residuals, "no lesion is estimated"),
                shareOf(clean, false, level, residuals, "every cow is estimated to have a lesion"),
                within(true, true, level, residuals),
                within(false, true, level, residuals),
                within(true, false, level, residuals),
                area(lesion, clean, level, residuals));
    }

    private double[] masses(ToDoubleFunction<Level> mass) {
        return levels.stream().mapToDouble(mass).toArray();
    }

    /** Share of a mass (lesions, or their absence) that lies on one side of the cut. */
    private Estimate shareOf(
            double[] mass, boolean positive, double level, @Nullable CowResiduals residuals, String nothing) {
        boolean ofLesion = positive;
        double a = 0;
        double b = 0;
        double n = 0;
        for (int i = 0; i < levels.size(); i++) {
            n += levels.get(i).scored;
            if (levels.get(i).positive == positive) {
                a += mass[i];
            } else {
                b += mass[i];
            }
        }
        String method = residuals == null ? METHOD : METHOD_CLUSTERED;
        long units = Math.round(n);
        if (a + b <= 0) {
            return Estimate.missing(units, method, nothing);
        }
        if (a <= 0 || b <= 0) {
            return Estimate.pointOnly(a / (a + b), units, method, "none or all: the delta method gives no interval");
        }
        if (residuals != null && residuals.cows < 2) {
            return Estimate.pointOnly(a / (a + b), units, method, ONE_COW);
        }
        double[] gradient = new double[levels.size()];
        double variance = 0;
        for (int i = 0; i < levels.size(); i++) {
            Level l = levels.get(i);
            double side = l.positive == positive ? a : -b;
            gradient[i] = 1 / side;
            double q = ofLesion ? l.p() : 1 - l.p();
            variance += (l.scored * q * q + l.scored * l.scored * q * (1 - q) / l.lifted) / (side * side);
        }
        double quantile = Proportions.normalQuantile(level);
        if (residuals != null) {
            double[] none = new double[levels.size()];
            variance = residuals.variance(ofLesion ? gradient : none, ofLesion ? none : gradient);
            quantile = Proportions.tQuantile(level, residuals.cows - 1.0);
        }
        return Proportions.logit(a / (a + b), Math.sqrt(variance), quantile, units, method);
    }

    /**
     * Share with (or without) a lesion among all scored, or among one side of the cut.
     *
     * @param lesion with a lesion, or without
     * @param oneSide positive side for lesions, negative side for their absence; else all
     */
    private Estimate within(boolean lesion, boolean oneSide, double level, @Nullable CowResiduals residuals) {
        double total = 0;
        for (Level l : levels) {
            total += !oneSide || l.positive == lesion ? l.scored : 0;
        }
        String method = residuals == null ? METHOD : METHOD_CLUSTERED;
        long units = Math.round(total);
        double value = among(lesion, oneSide);
        if (value <= 0 || value >= 1) {
            return Estimate.pointOnly(value, units, method, "none or all: the delta method gives no interval");
        }
        if (residuals != null && residuals.cows < 2) {
            return Estimate.pointOnly(value, units, method, ONE_COW);
        }
        double variance = 0;
        double[] ofLesions = new double[levels.size()];
        double[] ofClean = new double[levels.size()];
        for (int i = 0; i < levels.size(); i++) {
            Level l = levels.get(i);
            if (oneSide && l.positive != lesion) {
                continue;
            }
            double q = lesion ? l.p() : 1 - l.p();
            double share = l.scored / total;
            variance += share * (q - value) * (q - value) / total + share * share * q * (1 - q) / l.lifted;
            double[] wanted = lesion ? ofLesions : ofClean;
            double[] other = lesion ? ofClean : ofLesions;
            wanted[i] = (1 - value) / total;
            other[i] = -value / total;
        }
        double quantile = Proportions.normalQuantile(level);
        if (residuals != null) {
            variance = residuals.variance(ofLesions, ofClean);
            quantile = Proportions.tQuantile(level, residuals.cows - 1.0);
        }
        return Proportions.logit(value, Math.sqrt(variance) / (value * (1 - value)), quantile, units, method);
    }

    /** Area under the curve over levels, weights the estimated cows with and without a lesion; ties a half. */
    private Estimate area(double[] a, double[] b, double level, @Nullable CowResiduals residuals) {
        double sumA = 0;
        double sumB = 0;
        double n = 0;
        for (int i = 0; i < a.length; i++) {
            sumA += a[i];
            sumB += b[i];
            n += levels.get(i).scored;
        }
        String method = "Begg and Greenes 1983 by score level, delta method"
                + (residuals == null ? "" : ", variance clustered by cow");
        long units = Math.round(n);
        if (sumA <= 0 || sumB <= 0) {
            return Estimate.missing(
                    units, method, sumA <= 0 ? "no lesion is estimated" : "every cow is estimated to have a lesion");
        }
        double area = areaOf(a, b).orElseThrow();
        double below = 0;
        if (residuals != null && residuals.cows < 2) {
            return Estimate.pointOnly(area, units, method, ONE_COW);
        }
        double[] byLesion = new double[a.length];
        double[] byClean = new double[a.length];
        double above = sumA;
        for (int i = 0; i < a.length; i++) {
            above -= a[i];
            byLesion[i] = (below + b[i] / 2 - area * sumB) / (sumA * sumB);
            byClean[i] = (above + a[i] / 2 - area * sumA) / (sumA * sumB);
            below += b[i];
        }
        double variance;
        double quantile;
        if (residuals == null) {
            // Level counts are multinomial with fixed total; the area does not change when all counts grow alike.
            variance = 0;
            for (int i = 0; i < a.length; i++) {
                Level l = levels.get(i);
                double ofCount = byLesion[i] * l.p() + byClean[i] * (1 - l.p());
                double ofShare = l.scored * (byLesion[i] - byClean[i]);
                variance += l.scored * ofCount * ofCount + ofShare * ofShare * l.p() * (1 - l.p()) / l.lifted;
            }
            quantile = Proportions.normalQuantile(level);
        } else {
            variance = residuals.variance(byLesion, byClean);
            quantile = Proportions.tQuantile(level, residuals.cows - 1.0);
        }
        double half = quantile * Math.sqrt(Math.max(0, variance));
        if (half <= 0) {
            return Estimate.pointOnly(area, units, method, "none or all on every level: no interval by this method");
        }
        return Estimate.of(area, Math.max(0, area - half), Math.min(1, area + half), units, method);
    }

    /** For each cow what she adds to the estimated lesions and to their absence, by level. */
    private final class CowResiduals {
        private final List<double[]> ofCows = new ArrayList<>();
        final int cows;

        CowResiduals(List<Observation> scored) {
            int count = levels.size();
            double[] sum = new double[2 * count];
            for (int i = 0; i < scored.size(); i++) {
                Observation o = scored.get(i);
                int at = levelOf(o.score());
                Level l = levels.get(at);
                double shift = o.isLifted() ? l.scored / l.lifted * ((o.hasLesion() ? 1 : 0) - l.p()) : 0;
                sum[at] += l.p() + shift;
                sum[count + at] += 1 - l.p() - shift;
                if (i + 1 == scored.size() || !scored.get(i + 1).cow().equals(o.cow())) {
                    ofCows.add(sum);
                    sum = new double[2 * count];
                }
            }
            cows = ofCows.size();
        }

        private int levelOf(double score) {
            for (int i = 0; i < levels.size(); i++) {
                if (levels.get(i).scores.contains(score)) {
                    return i;
                }
            }
            throw new IllegalArgumentException("no level " + score);
        }

        /** Variance of a figure with these derivatives; their sum over all cows is 0 because figures are ratios. */
        double variance(double[] byLesion, double[] byClean) {
            double squares = 0;
            for (double[] cow : ofCows) {
                double sum = 0;
                for (int i = 0; i < byLesion.length; i++) {
                    sum += byLesion[i] * cow[i] + byClean[i] * cow[byLesion.length + i];
                }
                squares += sum * sum;
            }
            return squares * cows / (cows - 1.0);
        }
    }
}
