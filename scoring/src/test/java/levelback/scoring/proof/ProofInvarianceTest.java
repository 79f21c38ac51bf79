package levelback.scoring.proof;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import levelback.scoring.proof.ProofQuestion.Unit;
import levelback.scoring.value.Estimate;
import levelback.scoring.value.Leg;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

/** What no name, no scale and no shift of days may change (rules of the definitions; no source needed). */
class ProofInvarianceTest {

    private static final LocalDate DAY = LocalDate.of(2026, 3, 2);

    private static final List<Leg> LEGS = List.of(Leg.LF, Leg.RF, Leg.LH, Leg.RH);

    private record Herd(List<ScoreRow> scores, List<TrimRow> trims) {}

    @Property(tries = 15)
    void namesOfCowsPlayNoPart(@ForAll long seed, @ForAll @IntRange(min = 1, max = 4) int visits) {
        Herd herd = herd(seed, visits, .3);
        ProofResult one = prove(herd, 2, 0, 10);
        ProofResult other = prove(renamed(herd, cow -> "x" + cow.hashCode() * 31L), 2, 0, 10);
        same(figures(one), figures(other));
        assertThat(other.flow()).isEqualTo(one.flow());
        assertThat(other.byLesion().stream().map(ProofResult.OfLesion::n))
                .containsExactlyElementsOf(
                        one.byLesion().stream().map(ProofResult.OfLesion::n).toList());
    }

    /** Only the order of the scores counts: another scale with the cut mapped along gives the same figures. */
    @Property(tries = 15)
    void aMonotoneMapOfTheScoresPlaysNoPart(@ForAll long seed, @ForAll @IntRange(min = 1, max = 4) int visits) {
        Herd herd = herd(seed, visits, .3);
        DoubleUnaryOperator map = score -> -7 + Math.pow(2, score) / 8;
        Herd mapped = new Herd(
                herd.scores().stream()
                        .map(s -> new ScoreRow(s.cow(), s.date(), map.applyAsDouble(s.score()), s.scorer(), s.leg()))
                        .toList(),
                herd.trims());
        ProofResult one = prove(herd, 2, 0, 10);
        ProofResult other = prove(mapped, map.applyAsDouble(2), 0, 10);
        same(figures(one), figures(other));
        assertThat(other.netBenefit().stream().map(ProofResult.AtThreshold::value))
                .containsExactlyElementsOf(one.netBenefit().stream()
                        .map(ProofResult.AtThreshold::value)
                        .toList());
    }

    /** Scores moved back by a week and the window moved on by a week; also from before the score (minus 7 to 3). */
    @Property(tries = 15)
    void shiftedScoresWithAShiftedWindowAreTheSame(@ForAll long seed, @ForAll @IntRange(min = -7, max = 7) int shift) {
        Herd herd = herd(seed, 3, .3);
        Herd moved = new Herd(
                herd.scores().stream()
                        .map(s -> new ScoreRow(s.cow(), s.date().minusDays(shift), s.score(), s.scorer(), s.leg()))
                        .toList(),
                herd.trims());
        same(figures(prove(herd, 2, 0, 10)), figures(prove(moved, 2, shift, 10 + shift)));
    }

    /** Weights of one change nothing: the weighted figures of a herd in which all were lifted are the observed ones. */
    @Property(tries = 15)
    void oneChanceForAllGivesTheObservedFigures(@ForAll long seed, @ForAll @IntRange(min = 1, max = 3) int visits) {
        Herd herd = herd(seed, visits, .5);
        List<TrimRow> drawn = herd.trims().stream()
                .map(t -> new TrimRow(t.cow(), t.date(), t.leg(), t.lesion(), t.stage(), OptionalDouble.of(.25)))
                .toList();
        ProofResult result = prove(new Herd(herd.scores(), drawn), 2, 0, 10);
        if (result.weighted().isPresent()) {
            ProofResult.Weighted w = result.weighted().get();
            ProofResult.Observed o = result.observed();
            same(
                    List.of(o.sensitivity(), o.specificity(), o.ppv(), o.npv()),
                    List.of(w.sensitivity(), w.specificity(), w.ppv(), w.npv()),
                    false);
            assertThat(w.scoredTotal()).isCloseTo(4.0 * result.counts().lifted(), within(1e-9));
            assertThat(w.lesionsTotal())
                    .isCloseTo(4.0 * (result.counts().tp() + result.counts().fn()), within(1e-9));
        }
    }

    /** By legs and by cows: every figure without a value or an interval says why, and every share lies in its interval. */
    @Property(tries = 25)
    void whatIsMissingAlwaysSaysWhy(
            @ForAll long seed, @ForAll @IntRange(min = 1, max = 3) int visits, @ForAll boolean legs) {
        Herd herd = herd(seed, visits, seed % 3 == 0 ? .02 : .3);
        ProofResult result = Proof.of(
                herd.scores(),
                herd.trims(),
                CheckValues.question(2, legs ? Unit.LEG : Unit.COW, 0, 10, seed % 2 == 0 ? "any" : "IP"));
        Stream.concat(figures(result).stream(), result.netBenefit().stream().map(ProofResult.AtThreshold::value))
                .forEach(e -> {
                    if (e.value().isEmpty() || e.interval().isEmpty()) {
                        assertThat(e.why().orElse("")).isNotBlank();
                    } else {
                        assertThat(e.value().getAsDouble())
                                .isBetween(
                                        e.interval().get().low() - 1e-12,
                                        e.interval().get().high() + 1e-12);
                    }
                });
        result.cuts()
                .forEach(cut -> assertThat(cut.correctedSensitivity().isEmpty()
                                || cut.correctedSpecificity().isEmpty())
                        .isEqualTo(!cut.whyNotCorrected().isEmpty()));
    }

    private static List<Estimate> figures(ProofResult r) {
        List<Estimate> all = new ArrayList<>();
        ProofResult.Observed o = r.observed();
        all.addAll(List.of(
                o.sensitivity(),
                o.specificity(),
                o.ppv(),
                o.npv(),
                o.lrPositive(),
                o.lrNegative(),
                o.youden(),
                o.auc()));
        ProofResult.Alternatives a = r.alternatives();
        all.addAll(List.of(a.lrPositive(), a.lrNegative(), a.youden(), a.auc()));
        Stream.of(r.corrected(), r.correctedDelta(), r.correctedBootstrap(), r.correctedDraws())
                .flatMap(Optional::stream)
                .forEach(c -> all.addAll(
                        List.of(c.sensitivity(), c.specificity(), c.ppv(), c.npv(), c.prevalence(), c.auc())));
        Stream.of(r.weighted(), r.weightedDraws())
                .flatMap(Optional::stream)
                .forEach(w -> all.addAll(List.of(w.sensitivity(), w.specificity(), w.ppv(), w.npv(), w.prevalence())));
        return all;
    }

    private static void same(List<Estimate> one, List<Estimate> other) {
        same(one, other, true);
    }

    private static void same(List<Estimate> one, List<Estimate> other, boolean intervals) {
        assertThat(other).hasSameSizeAs(one);
        for (int i = 0; i < one.size(); i++) {
            assertThat(other.get(i).value().isPresent())
                    .isEqualTo(one.get(i).value().isPresent());
            assertThat(other.get(i).n()).isEqualTo(one.get(i).n());
            double value = one.get(i).value().orElse(0);
            assertThat(other.get(i).value().orElse(0)).isCloseTo(value, within(1e-9 * (1 + Math.abs(value))));
            if (intervals && one.get(i).interval().isPresent()) {
                double high = one.get(i).interval().get().high();
                assertThat(other.get(i).interval().orElseThrow().high())
                        .isCloseTo(high, within(1e-9 * (1 + Math.abs(high))));
            }
        }
    }

    private static ProofResult prove(Herd herd, double cut, int from, int to) {
        return Proof.of(herd.scores(), herd.trims(), CheckValues.question(cut, Unit.COW, from, to, "any"));
    }

    private static Herd renamed(Herd herd, UnaryOperator<String> name) {
        return new Herd(
                herd.scores().stream()
                        .map(s -> new ScoreRow(name.apply(s.cow()), s.date(), s.score(), s.scorer(), s.leg()))
                        .toList(),
                herd.trims().stream()
                        .map(t ->
                                new TrimRow(name.apply(t.cow()), t.date(), t.leg(), t.lesion(), t.stage(), t.chance()))
                        .toList());
    }

    private static Herd herd(long seed, int visits, double soundLifted) {
        Random random = new Random(seed);
        List<ScoreRow> scores = new ArrayList<>();
        List<TrimRow> trims = new ArrayList<>();
        for (int c = 0; c < 60; c++) {
            for (int v = 0; v < visits; v++) {
                LocalDate day = DAY.plusDays(30L * v);
                double score = random.nextInt(4);
                Leg leg = LEGS.get(random.nextInt(4));
                scores.add(new ScoreRow("c" + c, day, score, "A", Optional.of(leg)));
                if (random.nextDouble() < (score >= 2 ? .9 : soundLifted)) {
                    trims.add(new TrimRow(
                            "c" + c,
                            day.plusDays(random.nextInt(11)),
                            Optional.of(leg),
                            random.nextInt(4) < score ? "SU" : "NONE",
                            "",
                            score < 2 ? OptionalDouble.of(soundLifted) : OptionalDouble.empty()));
                }
            }
        }
        return new Herd(scores, trims);
    }
}
