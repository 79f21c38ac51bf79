package levelback.scoring.proof;

import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Predicate;
import levelback.scoring.value.Estimate;
import levelback.scoring.value.Interval;
import levelback.scoring.value.Leg;

/**
 * Whether the scores found the lesions: every figure, and every observation behind them.
 *
 * @param question what was asked
 * @param scored observations that count
 * @param counts score against lesion among the lifted
 * @param clustered whether a cow comes more than once among the lifted, or the unit is the leg
 * @param byScore counts of each score level, soundest first
 * @param observed figures of the lifted alone
 * @param alternatives figures of the lifted with intervals that cover better where cows repeat or are few
 * @param corrected figures of all scored; empty where the data cannot carry them
 * @param correctedDelta the same with intervals by the delta method; empty where {@code corrected} is
 * @param correctedBootstrap the same with intervals by drawing cows; empty where {@code corrected} is, and where there are
 *     too many cows to draw
 * @param correctedDraws the same with intervals by draws within levels; empty where {@code corrected} is
 * @param whyNotCorrected what is missing; empty text where {@code corrected} is there
 * @param weighted figures weighted by the chance of control lifts; empty where there were none
 * @param weightedDraws the same with intervals by draws within level and chance
 * @param trend whether lesions grow commoner with the score
 * @param byLesion every code found on a lifted observation, by code
 * @param byLeg leg scored against leg with a lesion of the set; pairs that occur
 * @param lagDays days from score to first lift; those that occur
 * @param cuts every level above the lowest as a cut
 * @param netBenefit what lifting from each cut on is worth, by cut and threshold
 * @param flow what became of every score row
 * @param observations every observation, by cow and day; those with an open window among them
 */
public record ProofResult(
        ProofQuestion question,
        long scored,
        TwoByTwo counts,
        boolean clustered,
        List<AtScore> byScore,
        Observed observed,
        Alternatives alternatives,
        Optional<Corrected> corrected,
        Optional<Corrected> correctedDelta,
        Optional<Corrected> correctedBootstrap,
        Optional<Corrected> correctedDraws,
        String whyNotCorrected,
        Optional<Weighted> weighted,
        Optional<Weighted> weightedDraws,
        Trend trend,
        List<OfLesion> byLesion,
        List<LegPair> byLeg,
        List<Lag> lagDays,
        List<AtCut> cuts,
        List<AtThreshold> netBenefit,
        List<Step> flow,
        List<Observation> observations) {

    public ProofResult {
        byScore = List.copyOf(byScore);
        byLesion = List.copyOf(byLesion);
        byLeg = List.copyOf(byLeg);
        lagDays = List.copyOf(lagDays);
        cuts = List.copyOf(cuts);
        netBenefit = List.copyOf(netBenefit);
        flow = List.copyOf(flow);
        // Not copied: the list makes a million records only where somebody reads one.
        observations = Collections.unmodifiableList(observations);
    }

    /** Counts of one score level. */
    public record AtScore(double score, long scored, long lifted, long withLesion) {}

    /** Figures of the lifted alone. */
    public record Observed(
            Estimate sensitivity,
            Estimate specificity,
            Estimate ppv,
            Estimate npv,
            Estimate lrPositive,
            Estimate lrNegative,
            Estimate youden,
            Estimate auc) {}

    /**
     * Figures of the lifted by methods that cover better where cows repeat or are few; the values are the same.
     *
     * @param lrPositive clustered by cow where cows repeat
     * @param lrNegative clustered by cow where cows repeat
     * @param youden from the intervals of both shares
     * @param auc on the logit, with t
     */
    public record Alternatives(Estimate lrPositive, Estimate lrNegative, Estimate youden, Estimate auc) {}

    /**
     * Net benefit of lifting from a cut on, for a person who would lift from a chance {@code threshold} on.
     *
     * @param threshold chance of a lesion from which on a lift is worth it, in (0, 1)
     * @param value lesions found in a lifted cow, less the needless lifts at their price; lifting none is 0
     * @param liftAll the same with every cow lifted; empty where none was
     * @param corrected the same of all scored, by score level; empty where that cannot be estimated
     */
    public record AtThreshold(
            double cut, double threshold, Estimate value, OptionalDouble liftAll, OptionalDouble corrected) {}

    /**
     * Figures of all scored, the never lifted taken to be like the lifted of their score.
     *
     * @param assumption the assumption in words
     */
    public record Corrected(
            String assumption,
            Estimate sensitivity,
            Estimate specificity,
            Estimate ppv,
            Estimate npv,
            Estimate prevalence,
            Estimate auc) {}

    /**
     * Figures weighted by the known chance of being lifted.
     *
     * @param lesionsTotal observations with a lesion among all scored, as the weights have it (Horvitz and Thompson)
     * @param scoredTotal all scored, as the weights have it; far from {@code scored} where cows were lifted or left out
     *     otherwise than by the chance on their cards
     */
    public record Weighted(
            Estimate sensitivity,
            Estimate specificity,
            Estimate ppv,
            Estimate npv,
            Estimate prevalence,
            double lesionsTotal,
            double scoredTotal) {}

    /**
     * A test for trend.
     *
     * @param statistic X² on one degree of freedom
     * @param pValue two-sided
     * @param why what is missing; empty text where both are there
     */
    public record Trend(OptionalDouble statistic, OptionalDouble pValue, String why) {}

    /**
     * How one lesion fared.
     *
     * @param n lifted observations with it
     * @param sensitivity share of them scored at or above the cut
     * @param why why there is no interval, where there is none
     * @param alarm whether it wants action that day
     * @param inSet whether it is one of the lesions looked for
     */
    public record OfLesion(
            String lesion,
            long n,
            double sensitivity,
            Optional<Interval> sensitivityInterval,
            Optional<String> why,
            boolean alarm,
            boolean inSet) {}

    /** Leg scored against leg with a lesion. */
    public record LegPair(Leg scored, Leg found, long n) {}

    /** How many were first lifted so many days after the score. */
    public record Lag(int days, long n) {}

    /**
     * One cut.
     *
     * @param sensitivity of the lifted
     * @param specificity of the lifted
     * @param correctedSensitivity of all scored; empty where it cannot be estimated
     * @param correctedSpecificity of all scored; empty where it cannot be estimated
     * @param whyNotCorrected what is missing; empty text where nothing is
     */
    public record AtCut(
            double cut,
            Estimate sensitivity,
            Estimate specificity,
            OptionalDouble correctedSensitivity,
            OptionalDouble correctedSpecificity,
            String whyNotCorrected) {}

    /** One step of the flow. */
    public record Step(String step, long n) {}

    /** Whether an observation counts as lame at the cut asked for. */
    public boolean isPositive(Observation observation) {
        return observation.score() >= question.cut();
    }

    /** What keeps the figures of all scored from being had at one of the cuts; empty text where nothing does. */
    public String whyNotCorrected(double cut) {
        return cuts.stream()
                .filter(at -> at.cut() == cut)
                .map(AtCut::whyNotCorrected)
                .findFirst()
                .orElse("");
    }

    /** The observations behind a number. */
    public List<Observation> behind(Predicate<Observation> which) {
        return observations.stream().filter(which).toList();
    }
}
