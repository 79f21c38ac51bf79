package levelback.scoring.proof;

import java.util.List;
import java.util.OptionalDouble;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;

/** Whether lesions grow commoner with the score. */
final class TrendTest {

    private TrendTest() {}

    /**
     * Cochran–Armitage test over score levels, scores as numbers, variance {@code p(1-p)/N}; agrees with R's
     * {@code prop.trend.test}.
     *
     * <p>References: Cochran (1954), Biometrics 10:417; Armitage (1955), Biometrics 11:375.
     */
    static ProofResult.Trend of(List<ProofResult.AtScore> levels) {
        double n = 0;
        double x = 0;
        double weighted = 0;
        for (ProofResult.AtScore level : levels) {
            n += level.lifted();
            x += level.withLesion();
            weighted += level.lifted() * level.score();
        }
        if (n == 0) {
            return missing("no cow was lifted");
        }
        double mean = weighted / n;
        double p = x / n;
        double score = 0;
        double spread = 0;
        for (ProofResult.AtScore level : levels) {
            double from = level.score() - mean;
            score += level.withLesion() * from;
            spread += level.lifted() * from * from;
        }
        double variance = p * (1 - p) * spread;
        if (!(variance > 0)) {
            return missing(
                    x == 0 || x == n
                            ? "all lifted cows are alike: " + (x == 0 ? "none had" : "every one had")
                                    + " a lesion of the set"
                            : "all lifted cows have one score");
        }
        double statistic = score * score / variance;
        return new ProofResult.Trend(
                OptionalDouble.of(statistic),
                OptionalDouble.of(ChiSquaredDistribution.of(1).survivalProbability(statistic)),
                "");
    }

    private static ProofResult.Trend missing(String why) {
        return new ProofResult.Trend(OptionalDouble.empty(), OptionalDouble.empty(), why);
    }
}
