package levelback.scoring.proof;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
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
    private final ScoredRows rows;
    private final boolean liftedRepeat;
    private final boolean scoredRepeat;

    private Proof(List<ScoreRow> scores, List<TrimRow> trims, ProofQuestion question) {
        this.question = question;
        this.joined = Observations.join(scores, trims, question);
        this.rows = new ScoredRows(joined);
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
        CutSweep sweep = new CutSweep(rows);
        List<CutCounts> atLevels = new ArrayList<>();
        for (int at = rows.levels.length; at >= 0; at--) {
            atLevels.add(sweep.downTo(at));
        }
        Collections.reverse(atLevels);
        CutCounts counts = atLevels.get(cutLevel);
        List<ProofResult.AtScore> byScore = byScore();
        Optional<VerificationBias> bias = VerificationBias.of(rows.counts, cutLevel);
        Optional<ProofResult.Corrected> delta =
                bias.map(b -> corrected(new CorrectedDelta(b, rows, level, scoredRepeat)::estimate));
        boolean drawn = rows.cows() >= 2 && rows.cows() <= CowBootstrap.MOST_COWS;
        Optional<ProofResult.Corrected> bootstrap = bias.filter(b -> drawn)
                .map(b -> corrected(new CowBootstrap(b, rows, cutLevel, level, question.seed())::estimate));
        Optional<ProofResult.Corrected> draws = bias.filter(b -> rows.cows() >= 2 && rows.levels.length <= MOST_LEVELS)
                .map(b -> {
                    DesignEffect effect =
                            scoredRepeat ? DesignEffect.of(rows, counts, cutLevel, false) : DesignEffect.NONE;
                    LevelDraws of =
                            new LevelDraws(b.levels(), b.levels().scored, effect, scoredRepeat, level, question.seed());
                    return corrected(figure -> of.estimate(figure, b.units(figure)));
                });
        ProofResult.Observed observed = observed(counts);
        Optional<ProofResult.Weighted> weighted = ControlLifts.of(rows, cutLevel, level);
        Optional<ProofResult.Weighted> weightedDraws = weighted.flatMap(
                w -> ControlLifts.draws(rows, counts, cutLevel, w, liftedRepeat, level, question.seed()));
        List<ProofResult.AtCut> cuts = new ArrayList<>();
        List<ProofResult.AtThreshold> netBenefit = new ArrayList<>();
        overCuts(atLevels, cuts, netBenefit);
        return new ProofResult(
                question,
                rows.rows(),
                counts.counts(),
                liftedRepeat,
                byScore,
                observed,
                Alternatives.of(counts, rows, observed.sensitivity(), observed.specificity(), level, liftedRepeat),
                (scoredRepeat && bootstrap.isPresent() ? bootstrap : delta).map(c -> filled(c, draws)),
                delta,
                bootstrap,
                draws,
                PooledLevels.obstacle(rows.counts, cutLevel),
                weighted.map(w -> filled(w, weightedDraws)),
                weightedDraws,
                TrendTest.of(byScore.stream().filter(s -> s.lifted() > 0).toList()),
                LesionTally.of(joined, question, liftedRepeat),
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
                counts.counts().lifted() == 0 ? "no cow was lifted" : "every lifted cow had a lesion of the set");
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

    /** Where a method gives no interval, the draws stand in: better than none. */
    private static ProofResult.Corrected filled(ProofResult.Corrected of, Optional<ProofResult.Corrected> draws) {
        return draws.map(d -> new ProofResult.Corrected(
                        of.assumption(),
                        filled(of.sensitivity(), d.sensitivity()),
                        filled(of.specificity(), d.specificity()),
                        filled(of.ppv(), d.ppv()),
                        filled(of.npv(), d.npv()),
                        filled(of.prevalence(), d.prevalence()),
                        filled(of.auc(), d.auc())))
                .orElse(of);
    }

    private static ProofResult.Weighted filled(ProofResult.Weighted of, Optional<ProofResult.Weighted> draws) {
        return draws.map(d -> new ProofResult.Weighted(
                        filled(of.sensitivity(), d.sensitivity()),
                        filled(of.specificity(), d.specificity()),
                        filled(of.ppv(), d.ppv()),
                        filled(of.npv(), d.npv()),
                        filled(of.prevalence(), d.prevalence()),
                        of.lesionsTotal(),
                        of.scoredTotal()))
                .orElse(of);
    }

    private static Estimate filled(Estimate of, Estimate draws) {
        return of.value().isPresent()
                        && of.interval().isEmpty()
                        && draws.interval().isPresent()
                ? draws
                : of;
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
    private void overCuts(
            List<CutCounts> atLevels, List<ProofResult.AtCut> cuts, List<ProofResult.AtThreshold> netBenefit) {
        boolean few = rows.levels.length <= MOST_LEVELS;
        for (int at = 1; at < rows.levels.length; at++) {
            double cut = rows.levels[at];
            CutCounts counts = atLevels.get(at);
            Optional<VerificationBias> bias = few ? VerificationBias.of(rows.counts, at) : Optional.empty();
            String why = few
                    ? bias.map(VerificationBias::gap).orElse(PooledLevels.obstacle(rows.counts, at))
                    : "over " + MOST_LEVELS + " levels: not worked out at every one";
            cuts.add(new ProofResult.AtCut(
                    cut,
                    sensitivity(counts),
                    specificity(counts),
                    bias.map(b -> b.value(Figure.SENSITIVITY)).orElse(OptionalDouble.empty()),
                    bias.map(b -> b.value(Figure.SPECIFICITY)).orElse(OptionalDouble.empty()),
                    why));
            if (few) {
                netBenefit.addAll(NetBenefit.at(cut, counts, bias, question.level(), liftedRepeat));
            }
        }
    }

    private List<ProofResult.LegPair> byLeg() {
        long[][] table = new long[1 << Leg.values().length][1 << Leg.values().length];
        for (int i = 0; i < joined.folds.size; i++) {
            if (joined.lag[i] != Observations.NOT_LIFTED) {
                table[joined.folds.legs[i]][joined.lesionLegs[i]]++;
            }
        }
        List<ProofResult.LegPair> list = new ArrayList<>();
        for (Leg one : Leg.values()) {
            for (Leg other : Leg.values()) {
                long n = 0;
                for (int mine = 1; mine < table.length; mine++) {
                    for (int found = 1; found < table.length; found++) {
                        if (table[mine][found] > 0
                                && ScoreFolds.legs(mine).contains(one)
                                && ScoreFolds.legs(found).contains(other)) {
                            n += table[mine][found];
                        }
                    }
                }
                if (n > 0) {
                    list.add(new ProofResult.LegPair(one, other, n));
                }
            }
        }
        return list;
    }

    private List<ProofResult.Lag> lagDays() {
        Map<Integer, long[]> days = new TreeMap<>();
        for (int lag : joined.lag) {
            if (lag != Observations.NOT_LIFTED) {
                days.computeIfAbsent(lag, d -> new long[1])[0]++;
            }
        }
        return days.entrySet().stream()
                .map(e -> new ProofResult.Lag(e.getKey(), e.getValue()[0]))
                .toList();
    }

    /** Every score row ends in exactly one of rowsWithoutLeg, windowOpen, neverLifted, refused and lifted. */
    private List<ProofResult.Step> flow() {
        Map<Box, long[]> rowsIn = new EnumMap<>(Box.class);
        for (int i = 0; i < joined.folds.size; i++) {
            rowsIn.computeIfAbsent(joined.box[i], box -> new long[1])[0] += joined.folds.folded[i];
        }
        ToLongFunction<Box> of = box -> rowsIn.getOrDefault(box, new long[1])[0];
        long withLesion = of.applyAsLong(Box.WITH_LESION);
        long inLifted = withLesion + of.applyAsLong(Box.NO_LESION);
        long open = of.applyAsLong(Box.WINDOW_OPEN);
        List<ProofResult.Step> steps = new ArrayList<>();
        steps.add(new ProofResult.Step("rows", joined.folds.rows));
        if (question.unit() == ProofQuestion.Unit.LEG) {
            steps.add(new ProofResult.Step("rowsWithoutLeg", joined.folds.rowsWithoutLeg));
        }
        steps.add(new ProofResult.Step("windowOpen", open));
        steps.add(new ProofResult.Step("scored", joined.folds.rows - joined.folds.rowsWithoutLeg - open));
        steps.add(new ProofResult.Step("neverLifted", of.applyAsLong(Box.NEVER_LIFTED)));
        steps.add(new ProofResult.Step("refused", of.applyAsLong(Box.REFUSED)));
        steps.add(new ProofResult.Step("lifted", inLifted));
        steps.add(new ProofResult.Step("withLesion", withLesion));
        steps.add(new ProofResult.Step("trimsOfUnscored", joined.trims.ofUnscored));
        return steps;
    }
}
