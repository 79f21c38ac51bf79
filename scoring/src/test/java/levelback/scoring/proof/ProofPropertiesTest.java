package levelback.scoring.proof;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.Stream;
import levelback.scoring.proof.ProofQuestion.Unit;
import levelback.scoring.value.Estimate;
import levelback.scoring.value.Leg;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

/** What must hold whatever the herd looks like (rules of the definitions; no source needed). */
class ProofPropertiesTest {

    private static final List<Leg> LEGS = List.of(Leg.LF, Leg.RF, Leg.LH, Leg.RH);

    private record Herd(List<ScoreRow> scores, List<TrimRow> trims, ProofQuestion question) {}

    @Property(tries = 150)
    void everyScoreRowEndsInExactlyOneBox(@ForAll long seed, @ForAll @IntRange(max = 60) int size) {
        Herd herd = herd(seed, size);
        Map<String, Long> flow = new HashMap<>();
        ProofResult result = Proof.of(herd.scores(), herd.trims(), herd.question());
        result.flow().forEach(step -> flow.put(step.step(), step.n()));
        long ends = Stream.of("rowsWithoutLeg", "windowOpen", "neverLifted", "refused", "lifted")
                .mapToLong(step -> flow.getOrDefault(step, 0L))
                .sum();
        assertThat(ends).isEqualTo(herd.scores().size());
        assertThat(result.byScore().stream()
                        .mapToLong(ProofResult.AtScore::scored)
                        .sum())
                .isEqualTo(result.scored());
        assertThat(result.byScore().stream()
                        .mapToLong(ProofResult.AtScore::lifted)
                        .sum())
                .isEqualTo(result.counts().lifted());
        assertThat(result.lagDays().stream().mapToLong(ProofResult.Lag::n).sum())
                .isEqualTo(result.counts().lifted());
    }

    @Property(tries = 150)
    void sharesLieBetweenNoneAndAllAndInsideTheirIntervals(@ForAll long seed, @ForAll @IntRange(max = 60) int size) {
        Herd herd = herd(seed, size);
        ProofResult result = Proof.of(herd.scores(), herd.trims(), herd.question());
        ProofResult.Observed o = result.observed();
        List<Estimate> shares = new ArrayList<>(List.of(o.sensitivity(), o.specificity(), o.ppv(), o.npv(), o.auc()));
        result.corrected()
                .ifPresent(c -> shares.addAll(
                        List.of(c.sensitivity(), c.specificity(), c.ppv(), c.npv(), c.prevalence(), c.auc())));
        result.weighted()
                .ifPresent(w ->
                        shares.addAll(List.of(w.sensitivity(), w.specificity(), w.ppv(), w.npv(), w.prevalence())));
        for (Estimate share : shares) {
            share.value().ifPresent(v -> assertThat(v).isBetween(0.0, 1.0));
            share.interval()
                    .ifPresent(i -> assertThat(0 <= i.low() && i.high() <= 1).isTrue());
        }
        for (Estimate share : List.of(o.sensitivity(), o.specificity(), o.ppv(), o.npv(), o.auc())) {
            share.interval()
                    .ifPresent(
                            i -> assertThat(share.value().orElseThrow()).isBetween(i.low() - 1e-12, i.high() + 1e-12));
        }
    }

    @Property(tries = 80)
    void theOrderOfTheRowsPlaysNoPart(@ForAll long seed, @ForAll @IntRange(max = 60) int size) {
        Herd herd = herd(seed, size);
        List<ScoreRow> scores = new ArrayList<>(herd.scores());
        List<TrimRow> trims = new ArrayList<>(herd.trims());
        Collections.shuffle(scores, new Random(seed + 1));
        Collections.shuffle(trims, new Random(seed + 2));
        assertThat(Proof.of(scores, trims, herd.question()))
                .isEqualTo(Proof.of(herd.scores(), herd.trims(), herd.question()));
    }

    /** Where every scored cow was lifted there is nothing to correct. */
    @Property(tries = 80)
    void withEveryCowLiftedTheCorrectedFiguresEqualTheObserved(@ForAll long seed) {
        Random random = new Random(seed);
        List<ScoreRow> scores = new ArrayList<>();
        List<TrimRow> trims = new ArrayList<>();
        for (int i = 0; i < 80; i++) {
            scores.add(new ScoreRow("c" + i, DAY, random.nextInt(4), "", Optional.empty()));
            trims.add(trim("c" + i, DAY, random.nextInt(3) == 0 ? "SU" : "NONE", 1, random));
        }
        ProofResult result = Proof.of(scores, trims, CheckValues.question(2, Unit.COW, 0, 14, "alarm"));
        result.corrected().ifPresent(c -> {
            assertThat(c.sensitivity().value())
                    .isEqualTo(rounded(result.observed().sensitivity(), c.sensitivity()));
            assertThat(c.specificity().value())
                    .isEqualTo(rounded(result.observed().specificity(), c.specificity()));
        });
    }

    /** The second figure itself where the two differ by rounding only, else the first. */
    private static OptionalDouble rounded(Estimate first, Estimate second) {
        return Math.abs(first.value().orElse(-1) - second.value().orElse(-1)) < 1e-9 ? second.value() : first.value();
    }

    private static final LocalDate DAY = LocalDate.of(2026, 3, 2);

    private static Herd herd(long seed, int size) {
        Random random = new Random(seed);
        Unit unit = random.nextBoolean() ? Unit.COW : Unit.LEG;
        Map<List<Object>, ScoreRow> scores = new HashMap<>();
        List<TrimRow> trims = new ArrayList<>();
        String[] codes = {"SU", "NONE", "DD", "HHE", "REFUSED", "ZZ"};
        for (int i = 0; i < size; i++) {
            String cow = "c" + random.nextInt(Math.max(1, size / 2));
            LocalDate day = DAY.plusDays(14L * random.nextInt(4));
            Optional<Leg> leg = random.nextInt(3) == 0 ? Optional.empty() : Optional.of(LEGS.get(random.nextInt(4)));
            String scorer = random.nextInt(5) == 0 ? "B" : "A";
            scores.put(List.of(cow, day, leg, scorer), new ScoreRow(cow, day, random.nextInt(7) / 2.0, scorer, leg));
            for (int lines = random.nextInt(4); lines > 0; lines--) {
                trims.add(trim(
                        cow,
                        day.plusDays(random.nextInt(20) - 2L),
                        codes[random.nextInt(codes.length)],
                        random.nextInt(4) == 0 ? .25 : 1,
                        random));
            }
        }
        trims.add(trim("nobody", DAY, "SU", 1, random));
        Optional<LocalDate> until = random.nextBoolean() ? Optional.of(DAY.plusDays(40)) : Optional.empty();
        ProofQuestion question = new ProofQuestion(
                random.nextInt(5) / 1.0, unit, -1, 10, LesionSet.alarm(), Optional.empty(), until, .95, 1);
        return new Herd(List.copyOf(scores.values()), trims, question);
    }

    private static TrimRow trim(String cow, LocalDate day, String lesion, double chance, Random random) {
        return new TrimRow(
                cow,
                day,
                Optional.of(LEGS.get(random.nextInt(4))),
                lesion,
                lesion.equals("DD") && random.nextBoolean() ? "M4" : "",
                chance < 1 ? OptionalDouble.of(chance) : OptionalDouble.empty());
    }
}
