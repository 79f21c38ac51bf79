package levelback.scoring.proof;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.function.ToLongFunction;
import levelback.scoring.foot.Lesion;
import levelback.scoring.foot.Lesions;
import levelback.scoring.proof.Observation.Box;
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

    private final ProofQuestion question;
    private final Observations joined;
    private final List<Observation> scored;
    private final List<Observation> lifted;
    private final boolean liftedRepeat;
    private final boolean scoredRepeat;

    private Proof(List<ScoreRow> scores, List<TrimRow> trims, ProofQuestion question) {
        this.question = question;
        this.joined = Observations.join(scores, trims, question);
        this.scored = joined.all().stream().filter(Observation::isScored).toList();
        this.lifted = scored.stream().filter(Observation::isLifted).toList();
        boolean legs = question.unit() == ProofQuestion.Unit.LEG;
        this.liftedRepeat = legs || repeats(lifted);
        this.scoredRepeat = legs || repeats(scored);
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
        double cut = question.cut();
        double level = question.level();
        TwoByTwo counts = new TwoByTwo(
                count(lifted, o -> positive(o) && o.hasLesion()),
                count(lifted, o -> positive(o) && !o.hasLesion()),
                count(lifted, o -> !positive(o) && o.hasLesion()),
                count(lifted, o -> !positive(o) && !o.hasLesion()));
        List<ProofResult.AtScore> byScore = byScore();
        Optional<VerificationBias> bias = VerificationBias.of(byScore, cut);
        return new ProofResult(
                question,
                scored.size(),
                counts,
                liftedRepeat,
                byScore,
                observed(counts),
                bias.map(b -> b.figures(scored, byScore, question, scoredRepeat)),
                VerificationBias.obstacle(byScore, cut),
                ControlLifts.of(lifted, cut, level),
                TrendTest.of(byScore.stream().filter(s -> s.lifted() > 0).toList()),
                byLesion(),
                byLeg(),
                lagDays(),
                cuts(byScore),
                flow(),
                joined.all());
    }

    private ProofResult.Observed observed(TwoByTwo counts) {
        double level = question.level();
        return new ProofResult.Observed(
                share(this::positive, Observation::hasLesion, "no lifted cow had a lesion of the set"),
                share(o -> !positive(o), o -> !o.hasLesion(), noneClean()),
                share(Observation::hasLesion, this::positive, "no lifted cow scored at or above the cut"),
                share(o -> !o.hasLesion(), o -> !positive(o), "no lifted cow scored below the cut"),
                counts.lrPositive(level, liftedRepeat),
                counts.lrNegative(level, liftedRepeat),
                counts.youden(level, liftedRepeat),
                RocArea.of(lifted, level, liftedRepeat));
    }

    private String noneClean() {
        return lifted.isEmpty() ? "no cow was lifted" : "every lifted cow had a lesion of the set";
    }

    /** Share that {@code is} among the lifted that {@code counts}. */
    private Estimate share(Predicate<Observation> is, Predicate<Observation> counts, String nothing) {
        if (!liftedRepeat) {
            return Proportions.estimate(
                    count(lifted, counts.and(is)), count(lifted, counts), question.level(), nothing);
        }
        List<double[]> cows = new ArrayList<>();
        String cow = "";
        double[] of = new double[2];
        for (Observation o : lifted) {
            if (cows.isEmpty() || !o.cow().equals(cow)) {
                cow = o.cow();
                of = new double[2];
                cows.add(of);
            }
            if (counts.test(o)) {
                of[1]++;
                of[0] += is.test(o) ? 1 : 0;
            }
        }
        return Proportions.clustered(
                cows.stream().mapToDouble(c -> c[0]).toArray(),
                cows.stream().mapToDouble(c -> c[1]).toArray(),
                question.level(),
                nothing);
    }

    private List<ProofResult.AtScore> byScore() {
        TreeMap<Double, long[]> levels = new TreeMap<>();
        for (Observation o : scored) {
            long[] at = levels.computeIfAbsent(o.score(), s -> new long[3]);
            at[0]++;
            at[1] += o.isLifted() ? 1 : 0;
            at[2] += o.hasLesion() ? 1 : 0;
        }
        List<ProofResult.AtScore> list = new ArrayList<>();
        levels.forEach((score, at) -> list.add(new ProofResult.AtScore(score, at[0], at[1], at[2])));
        return list;
    }

    private List<ProofResult.OfLesion> byLesion() {
        TreeMap<String, long[]> codes = new TreeMap<>();
        lifted.forEach(o -> o.codes().forEach(code -> codes.computeIfAbsent(code, c -> new long[1])[0]++));
        List<ProofResult.OfLesion> list = new ArrayList<>();
        LesionSet alarm = LesionSet.alarm();
        codes.forEach((code, n) -> {
            Estimate found = share(this::positive, o -> o.codes().contains(code), "");
            list.add(new ProofResult.OfLesion(
                    code,
                    n[0],
                    found.value().orElse(0),
                    found.interval(),
                    Lesions.byCode(code).map(Lesion::alarm).orElse(alarm.has(code, "")),
                    question.lesions().has(code, "")));
        });
        return list;
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

    private List<ProofResult.AtCut> cuts(List<ProofResult.AtScore> byScore) {
        return byScore.stream()
                .skip(1)
                .map(at -> {
                    double cut = at.score();
                    Optional<VerificationBias> bias = VerificationBias.of(byScore, cut);
                    return new ProofResult.AtCut(
                            cut,
                            share(
                                    o -> o.score() >= cut,
                                    Observation::hasLesion,
                                    "no lifted cow had a lesion of the set"),
                            share(o -> o.score() < cut, o -> !o.hasLesion(), noneClean()),
                            bias.map(b -> b.value(VerificationBias.Figure.SENSITIVITY))
                                    .orElse(OptionalDouble.empty()),
                            bias.map(b -> b.value(VerificationBias.Figure.SPECIFICITY))
                                    .orElse(OptionalDouble.empty()));
                })
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

    private boolean positive(Observation o) {
        return o.score() >= question.cut();
    }

    private static long count(List<Observation> of, Predicate<Observation> which) {
        return of.stream().filter(which).count();
    }

    /** Whether a cow comes twice in a list sorted by cow. */
    private static boolean repeats(List<Observation> sorted) {
        for (int i = 1; i < sorted.size(); i++) {
            if (sorted.get(i).cow().equals(sorted.get(i - 1).cow())) {
                return true;
            }
        }
        return false;
    }
}
