package levelback.scoring.agreement;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import levelback.scoring.severity.ScorerSeverity;
import levelback.scoring.value.Estimate;

/**
 * How far the scorers of a panel agree. Session 1, except {@code within}.
 *
 * @param clips distinct clips
 * @param ratings scores, all sessions
 * @param levels of the scale, ascending
 * @param exactAgreement pairs of scorers on one clip that gave the same level; n: such pairs
 * @param withinOne those at most one scale unit apart
 * @param pairs every pair of scorers, by code point
 * @param alphaNominal Krippendorff's alpha; so the two after it
 * @param icc over clips that every scorer scored
 * @param within each scorer with a session 2, against her session 1
 * @param hardestClips those that split the scorers most, at most ten
 */
public record AgreementResult(
        List<String> scorers,
        int clips,
        long ratings,
        List<Double> levels,
        Estimate exactAgreement,
        Estimate withinOne,
        List<Pair> pairs,
        Estimate fleissKappa,
        Estimate alphaNominal,
        Estimate alphaOrdinal,
        Estimate alphaInterval,
        Estimate ac1,
        Estimate ac2Linear,
        Estimate ac2Quadratic,
        Estimate kendallW,
        Intraclass icc,
        List<LevelAgreement> levelAgreement,
        List<Within> within,
        List<ScorerSeverity> severity,
        List<HardClip> hardestClips) {

    public AgreementResult {
        scorers = List.copyOf(scorers);
        levels = List.copyOf(levels);
        pairs = List.copyOf(pairs);
        levelAgreement = List.copyOf(levelAgreement);
        within = List.copyOf(within);
        severity = List.copyOf(severity);
        hardestClips = List.copyOf(hardestClips);
    }

    /**
     * Two scorers.
     *
     * @param n clips that both scored
     * @param exact share of them on which they gave the same level; empty where there is none
     * @param table clips that a put in the row's level and b in the column's
     * @param bias mean of a's score minus b's
     */
    public record Pair(
            String a,
            String b,
            long n,
            OptionalDouble exact,
            Estimate kappa,
            Estimate kappaLinear,
            Estimate kappaQuadratic,
            List<List<Long>> table,
            Estimate bias,
            MarginTest bowker,
            MarginTest stuartMaxwell,
            MarginTest bhapkar) {
        public Pair {
            table = table.stream().map(List::copyOf).toList();
        }
    }

    /**
     * Agreement on one level: of the scores that name it, the share that another score of the clip repeats.
     *
     * @param value between scorers; empty where no clip with two scores has the level
     * @param within between the sessions of a scorer; empty where nobody has the level in a clip scored twice
     * @param why what is missing, where something is
     */
    public record LevelAgreement(double score, OptionalDouble value, OptionalDouble within, Optional<String> why) {}

    /**
     * A scorer's second session against her first.
     *
     * @param n clips she scored in both
     * @param exact share with the same level; empty where n is 0
     */
    public record Within(
            String scorer,
            long n,
            OptionalDouble exact,
            Estimate kappa,
            Estimate kappaLinear,
            Estimate kappaQuadratic) {}

    /**
     * A clip that splits the scorers.
     *
     * @param spread mean difference between two of its scores
     */
    public record HardClip(String clip, double spread) {}
}
