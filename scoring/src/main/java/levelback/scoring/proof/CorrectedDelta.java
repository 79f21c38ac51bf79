package levelback.scoring.proof;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import levelback.scoring.proof.VerificationBias.Figure;
import levelback.scoring.value.Estimate;

/**
 * Intervals of the corrected figures by the delta method: shares on the logit, the area on its own scale, cut off at 0
 * and 1.
 *
 * <p>With g and h the derivatives of a figure by the estimated observations of a level with and without a lesion, the
 * variance is {@code Σ N (g p + h (1-p))² + N² (g - h)² p (1-p) / n}: counts of levels multinomial, lesions binomial
 * among the n lifted of N. Where cows repeat, what each row adds to the figure is summed over each cow before it is
 * squared, with C/(C-1) and t on C-1 degrees of freedom.
 *
 * <p>Simulated coverage: shares 94 to 98 %. Where a level with few lifted showed no lesion its share counts as surely 0, and
 * then the area covers 50 to 83 % and the prevalence 74 to 93 % (too low); the bootstrap shares this. {@link LevelDraws}
 * covers 94 to 98 % there.
 *
 * <p>Reference: Begg & Greenes (1983), appendix, for two levels; the same by the delta method for more.
 */
final class CorrectedDelta {

    private static final String BEGG_GREENES = "Begg and Greenes 1983 by score level, delta method";
    private static final String ON_LOGIT = " on the logit";
    private static final String BY_COW = ", variance clustered by cow";

    private final VerificationBias bias;
    private final PooledLevels levels;
    private final ScoredRows rows;
    private final double level;
    private final boolean repeated;
    private final Map<Figure, Double> byCow;

    /** @param repeated whether to cluster by cow */
    CorrectedDelta(VerificationBias bias, ScoredRows rows, double level, boolean repeated) {
        this.bias = bias;
        this.levels = bias.levels();
        this.rows = rows;
        this.level = level;
        this.repeated = repeated;
        this.byCow = repeated && rows.cows() > 1 ? overCows() : Map.of();
    }

    /** A figure with its interval. */
    Estimate estimate(Figure figure) {
        String method = BEGG_GREENES + (figure == Figure.AUC ? "" : ON_LOGIT) + (repeated ? BY_COW : "");
        long units = bias.units(figure);
        OptionalDouble found = bias.value(figure);
        if (found.isEmpty()) {
            return Estimate.missing(units, method, bias.nothing());
        }
        double value = found.getAsDouble();
        if (figure != Figure.AUC && (value <= 0 || value >= 1)) {
            return Estimate.pointOnly(value, units, method, "none or all: the delta method gives no interval");
        }
        if (repeated && rows.cows() < 2) {
            return Estimate.pointOnly(value, units, method, Proportions.ONE_COW);
        }
        double variance = repeated ? byCow.getOrDefault(figure, 0.0) : overLevels(figure, value);
        double quantile =
                repeated ? Proportions.tQuantile(level, rows.cows() - 1.0) : Proportions.normalQuantile(level);
        if (figure != Figure.AUC) {
            return Proportions.logit(value, Math.sqrt(variance) / (value * (1 - value)), quantile, units, method);
        }
        double half = quantile * Math.sqrt(variance);
        if (half <= 0) {
            return Estimate.pointOnly(value, units, method, "none or all on every level: no interval by this method");
        }
        return Estimate.of(value, Math.max(0, value - half), Math.min(1, value + half), units, method);
    }

    /** Derivatives of a figure by the estimated observations of each level with and without a lesion. */
    private void derive(Figure figure, double value, double[] lesion, double[] clean) {
        if (figure == Figure.AUC) {
            deriveArea(value, lesion, clean);
            return;
        }
        double whole = switch (figure) {
            case SENSITIVITY -> bias.mass(true, true) + bias.mass(true, false);
            case SPECIFICITY -> bias.mass(false, true) + bias.mass(false, false);
            default -> bias.units(figure);
        };
        for (int i = 0; i < levels.size(); i++) {
            boolean positive = levels.positive[i];
            // Of a row with, and of one without a lesion: 1 in the part, 0 in the rest, NaN in neither.
            double ofLesion = switch (figure) {
                case SENSITIVITY -> positive ? 1 : 0;
                case PREVALENCE -> 1;
                case PPV -> positive ? 1 : Double.NaN;
                case NPV -> positive ? Double.NaN : 0;
                default -> Double.NaN;
            };
            double ofClean = switch (figure) {
                case SPECIFICITY -> positive ? 0 : 1;
                case PREVALENCE -> 0;
                case PPV -> positive ? 0 : Double.NaN;
                case NPV -> positive ? Double.NaN : 1;
                default -> Double.NaN;
            };
            lesion[i] = Double.isNaN(ofLesion) ? 0 : (ofLesion - value) / whole;
            clean[i] = Double.isNaN(ofClean) ? 0 : (ofClean - value) / whole;
        }
    }

    private void deriveArea(double area, double[] lesion, double[] clean) {
        double sick = bias.mass(true, true) + bias.mass(true, false);
        double sound = bias.mass(false, true) + bias.mass(false, false);
        double below = 0;
        double above = sick;
        for (int i = 0; i < levels.size(); i++) {
            double a = levels.mass(i, true);
            double b = levels.mass(i, false);
            above -= a;
            lesion[i] = (below + b / 2 - area * sound) / (sick * sound);
            clean[i] = (above + a / 2 - area * sick) / (sick * sound);
            below += b;
        }
    }

    private double overLevels(Figure figure, double value) {
        double[] lesion = new double[levels.size()];
        double[] clean = new double[levels.size()];
        derive(figure, value, lesion, clean);
        double variance = 0;
        for (int i = 0; i < lesion.length; i++) {
            double p = levels.share(i);
            double ofCount = lesion[i] * p + clean[i] * (1 - p);
            double ofShare = levels.scored[i] * (lesion[i] - clean[i]);
            variance += levels.scored[i] * ofCount * ofCount + ofShare * ofShare * p * (1 - p) / levels.lifted[i];
        }
        return variance;
    }

    /** Variances over cows of every figure that has a value, all in one pass over the rows. */
    private Map<Figure, Double> overCows() {
        Map<Figure, Double> variances = new EnumMap<>(Figure.class);
        List<Figure> figures = Stream.of(Figure.values())
                .filter(figure -> bias.value(figure).isPresent())
                .toList();
        int width = figures.size();
        double[] adds = new double[3 * levels.size() * width];
        for (int f = 0; f < width; f++) {
            double[] lesion = new double[levels.size()];
            double[] clean = new double[levels.size()];
            derive(figures.get(f), bias.value(figures.get(f)).orElse(0), lesion, clean);
            for (int i = 0; i < lesion.length; i++) {
                double p = levels.share(i);
                double weight = levels.scored[i] / levels.lifted[i];
                // The derivatives sum to 0 over all rows, because every figure is a ratio.
                double notLifted = lesion[i] * p + clean[i] * (1 - p);
                double apart = weight * (lesion[i] - clean[i]);
                adds[(3 * i + ScoredRows.NOT_LIFTED) * width + f] = notLifted;
                adds[(3 * i + ScoredRows.CLEAN) * width + f] = notLifted - apart * p;
                adds[(3 * i + ScoredRows.LESION) * width + f] = notLifted + apart * (1 - p);
            }
        }
        double[] squares = new double[width];
        double[] sum = new double[width];
        for (int cow = 0; cow < rows.cows(); cow++) {
            Arrays.fill(sum, 0);
            for (int i = rows.cowStart[cow]; i < rows.cowStart[cow + 1]; i++) {
                int from = (3 * levels.poolOf[rows.level[i]] + rows.state[i]) * width;
                for (int f = 0; f < width; f++) {
                    sum[f] += adds[from + f];
                }
            }
            for (int f = 0; f < width; f++) {
                squares[f] += sum[f] * sum[f];
            }
        }
        for (int f = 0; f < width; f++) {
            variances.put(figures.get(f), squares[f] * rows.cows() / (rows.cows() - 1.0));
        }
        return variances;
    }
}
