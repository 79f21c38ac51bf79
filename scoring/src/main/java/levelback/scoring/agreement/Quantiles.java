package levelback.scoring.agreement;

import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.apache.commons.statistics.distribution.FDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.TDistribution;

/** Quantiles of the usual distributions, two-sided levels of confidence. */
final class Quantiles {

    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

    private Quantiles() {}

    /** 1.96 at 0.95. */
    static double normal(double level) {
        return NORMAL.inverseCumulativeProbability(0.5 + level / 2);
    }

    static double normalAt(double probability) {
        return NORMAL.inverseCumulativeProbability(probability);
    }

    static double normalShare(double x) {
        return NORMAL.cumulativeProbability(x);
    }

    static double t(double level, double degreesOfFreedom) {
        return TDistribution.of(degreesOfFreedom).inverseCumulativeProbability(0.5 + level / 2);
    }

    /** The upper quantile of F: 1 − (1 − level) ÷ 2. */
    static double f(double level, double numerator, double denominator) {
        return FDistribution.of(numerator, denominator).inverseCumulativeProbability(0.5 + level / 2);
    }

    /** How often chi-squared is larger by chance. */
    static double chiSquaredAbove(double statistic, double degreesOfFreedom) {
        return ChiSquaredDistribution.of(degreesOfFreedom).survivalProbability(statistic);
    }
}
