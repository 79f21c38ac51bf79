package levelback.scoring.proof;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.ToLongFunction;
import levelback.scoring.proof.Observation.Box;
import levelback.scoring.proof.VerificationBias.Figure;
import levelback.scoring.value.Estimate;
import levelback.scoring.value.Leg;

/**
 * Did the scores find the lesions? Joins scores with trims and gives every figure with its interval, its n and its
 * method. The order of the rows plays no part, and the
 * same seed gives the same bytes.
 *
 * <p>Where a cow comes more than once, or the unit is the leg, observations are not independent: intervals are clustered
 * by cow and their method says so.
 */
public final class Proof {

    /** With so many levels the correction of each cut would take longer than anybody waits. */
    private static final int MOST_LEVELS = 1000;

    private final ProofQuestion question;
    private final Observations joined;
    private final List<Observation> lifted;
    private final ScoredRows rows;
    private final boolean liftedRepeat;
    private final boolean scoredRepeat;

    private Proof(List<ScoreRow> scores, List<TrimRow> trims, ProofQuestion question) {
        this.question = question;
        this.joined = Observations.join(scores, trims, question);
        List<Observation> scored =
                joined.all().stream().filter(Observation::isScored).toList();
        this.lifted = scored.stream().filter(Observation::isLifted).toList();
        this.rows = new ScoredRows(scored);
        boolean legs = question.unit() == ProofQuestion.Unit.LEG;
        this.liftedRepeat = legs || rows.repeats(true);
        this.scoredRepeat = legs || rows.repeats(false);
    }

    /**
     * Answers a question.
     *
     * @param scores in any order; several rows of a cow, day and scorer fold into the highest
     * @param trims in any order
     */
    public static ProofResult of(List<ScoreRow> scores, List<TrimRow> trims, ProofQuestion question) {
        return new Proof(scores, trims, question).result();
    }

    private ProofResult result() {
        double level = question.level();
        int cutLevel = rows.levelOf(question.cut());
        CutCounts counts = new CutSweep(rows).downTo(cutLevel);
        List<ProofResult.AtScore> byScore = byScore();
        Optional<VerificationBias> bias = VerificationBias.of(rows.counts, cutLevel);
        Optional<ProofResult.Corrected> delta =
                bias.map(b -> corrected(new CorrectedDelta(b, rows, level, scoredRepeat)::estimate));
        boolean drawn = rows.cows() >= 2 && rows.cows() <= CowBootstrap.MOST_COWS;
        Optional<ProofResult.Corrected> bootstrap = bias.filter(b -> drawn)
                .map(b -> corrected(new CowBootstrap(b, rows, cutLevel, level, question.seed())::estimate));
        List<ProofResult.AtCut> cuts = new ArrayList<>();
        List<ProofResult.AtThreshold> netBenefit = new ArrayList<>();
        overCuts(cuts, netBenefit);
        return new ProofResult(
                question,
                rows.rows(),
                counts.counts(),
                liftedRepeat,
                byScore,
                observed(counts),
                liftedRepeat ? Optional.of(ByCow.of(counts, level)) : Optional.empty(),
                scoredRepeat && bootstrap.isPresent() ? bootstrap : delta,
                delta,
                bootstrap,
                PooledLevels.obstacle(rows.counts, cutLevel),
                ControlLifts.of(lifted, question.cut(), level),
                TrendTest.of(byScore.stream().filter(s -> s.lifted() > 0).toList()),
                LesionTally.of(lifted, question, liftedRepeat),
                byLeg(),
                lagDays(),
                cuts,
                netBenefit,
                flow(),
                joined.all());
    }

    private ProofResult.Observed observed(CutCounts counts) {
        double level = question.level();
        return new ProofResult.Observed(
                sensitivity(counts),
                specificity(counts),
                share(counts.ppv(), "no lifted cow scored at or above the cut"),
                share(counts.npv(), "no lifted cow scored below the cut"),
                counts.counts().lrPositive(level, liftedRepeat),
                counts.counts().lrNegative(level, liftedRepeat),
                counts.counts().youden(level, liftedRepeat),
                RocArea.of(rows, level, liftedRepeat));
    }

    private Estimate sensitivity(CutCounts counts) {
        return share(counts.sensitivity(), "no lifted cow had a lesion of the set");
    }

    private Estimate specificity(CutCounts counts) {
        return share(
                counts.specificity(),
                lifted.isEmpty() ? "no cow was lifted" : "every lifted cow had a lesion of the set");
    }

    private Estimate share(CutCounts.Cluster sums, String nothing) {
        return liftedRepeat
                ? Proportions.clustered(sums, question.level(), nothing)
                : Proportions.estimate(Math.round(sums.x()), Math.round(sums.n()), question.level(), nothing);
    }

    private static ProofResult.Corrected corrected(Function<Figure, Estimate> of) {
        return new ProofResult.Corrected(
                VerificationBias.ASSUMPTION,
                of.apply(Figure.SENSITIVITY),
                of.apply(Figure.SPECIFICITY),
                of.apply(Figure.PPV),
                of.apply(Figure.NPV),
                of.apply(Figure.PREVALENCE),
                of.apply(Figure.AUC));
    }

    private List<ProofResult.AtScore> byScore() {
        List<ProofResult.AtScore> list = new ArrayList<>();
        for (int i = 0; i < rows.levels.length; i++) {
            list.add(new ProofResult.AtScore(
                    rows.levels[i], rows.counts[3 * i], rows.counts[3 * i + 1], rows.counts[3 * i + 2]));
        }
        return list;
    }

    /** Every level above the lowest as a cut. */
    private void overCuts(List<ProofResult.AtCut> cuts, List<ProofResult.AtThreshold> netBenefit) {
        CutSweep sweep = new CutSweep(rows);
        boolean few = rows.levels.length <= MOST_LEVELS;
        List<List<ProofResult.AtThreshold>> curves = new ArrayList<>();
        for (int at = rows.levels.length - 1; at > 0; at--) {
            double cut = rows.levels[at];
            CutCounts counts = sweep.downTo(at);
            Optional<VerificationBias> bias = few ? VerificationBias.of(rows.counts, at) : Optional.empty();
            cuts.add(new ProofResult.AtCut(
                    cut,
                    sensitivity(counts),
                    specificity(counts),
                    bias.map(b -> b.value(Figure.SENSITIVITY)).orElse(OptionalDouble.empty()),
                    bias.map(b -> b.value(Figure.SPECIFICITY)).orElse(OptionalDouble.empty()),
                    bias.map(VerificationBias::gap)
                            .orElseGet(() -> few
                                    ? PooledLevels.obstacle(rows.counts, rows.levelOf(cut))
                                    : "over " + MOST_LEVELS + " levels: not worked out at every one")));
            if (few) {
                curves.add(NetBenefit.at(cut, counts, bias, question.level(), liftedRepeat));
            }
        }
        Collections.reverse(cuts);
        Collections.reverse(curves);
        curves.forEach(netBenefit::addAll);
    }

    private List<ProofResult.LegPair> byLeg() {
        Map<Leg, Map<Leg, Long>> table = new EnumMap<>(Leg.class);
        for (Observation o : lifted) {
            for (Leg mine : o.legs()) {
                Map<Leg, Long> row = table.computeIfAbsent(mine, l -> new EnumMap<>(Leg.class));
                o.lesionLegs().forEach(found -> row.merge(found, 1L, Long::sum));
            }
        }
        List<ProofResult.LegPair> list = new ArrayList<>();
        table.forEach((mine, row) -> row.forEach((found, n) -> list.add(new ProofResult.LegPair(mine, found, n))));
        return list;
    }

    private List<ProofResult.Lag> lagDays() {
        Map<Integer, Long> days = new TreeMap<>();
        lifted.forEach(o -> o.lagDays().ifPresent(d -> days.merge(d, 1L, Long::sum)));
        return days.entrySet().stream()
                .map(e -> new ProofResult.Lag(e.getKey(), e.getValue()))
                .toList();
    }

    /** Every score row ends in exactly one of rowsWithoutLeg, windowOpen, neverLifted, refused and lifted. */
    private List<ProofResult.Step> flow() {
        Map<Box, Long> rows = new HashMap<>();
        joined.all().forEach(o -> rows.merge(o.box(), (long) o.rows(), Long::sum));
        ToLongFunction<Box> of = box -> rows.getOrDefault(box, 0L);
        long withLesion = of.applyAsLong(Box.WITH_LESION);
        long inLifted = withLesion + of.applyAsLong(Box.NO_LESION);
        long open = of.applyAsLong(Box.WINDOW_OPEN);
        List<ProofResult.Step> steps = new ArrayList<>();
        steps.add(new ProofResult.Step("rows", joined.rows()));
        if (question.unit() == ProofQuestion.Unit.LEG) {
            steps.add(new ProofResult.Step("rowsWithoutLeg", joined.rowsWithoutLeg()));
        }
        steps.add(new ProofResult.Step("windowOpen", open));
        steps.add(new ProofResult.Step("scored", joined.rows() - joined.rowsWithoutLeg() - open));
        steps.add(new ProofResult.Step("neverLifted", of.applyAsLong(Box.NEVER_LIFTED)));
        steps.add(new ProofResult.Step("refused", of.applyAsLong(Box.REFUSED)));
        steps.add(new ProofResult.Step("lifted", inLifted));
        steps.add(new ProofResult.Step("withLesion", withLesion));
        steps.add(new ProofResult.Step("trimsOfUnscored", joined.trimsOfUnscored()));
        return steps;
    }
}
