package levelback.clips.drawn.herd;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import levelback.clips.drawn.RecordingPlan;
import org.junit.jupiter.api.Test;

/** The herd of walker.md section 4: counts, chances and shares, each within 4.5 standard errors of what it is drawn by. */
class HerdPlanTest {

    private static final List<HerdPlan> HERDS =
            IntStream.rangeClosed(1, 40).mapToObj(seed -> HerdPlan.of(seed)).toList();

    private static void holds(String what, long hits, long n, double chance) {
        double limit = 4.5 * Math.sqrt(chance * (1 - chance) / n);
        assertThat((double) hits / n).as("%s: %d of %d", what, hits, n).isCloseTo(chance, within(limit));
    }

    @Test
    void sixtyCowsAndNineVisitsAFortnightApartInThePast() {
        for (HerdPlan plan : HERDS) {
            assertThat(plan.cows()).hasSize(60);
            assertThat(new HashSet<>(plan.cows().stream().map(HerdCow::number).toList()))
                    .hasSize(60);
            assertThat(new HashSet<>(plan.cows().stream().map(HerdCow::name).toList()))
                    .hasSize(60);
            assertThat(plan.cows())
                    .allMatch(cow -> cow.number().matches("\\d{3}") && cow.tag().matches("999\\d{12}"));
            assertThat(plan.visits()).hasSize(9);
            for (int v = 1; v < 9; v++) {
                LocalDate before = plan.visits().get(v - 1).date();
                assertThat(ChronoUnit.DAYS.between(before, plan.visits().get(v).date()))
                        .isEqualTo(14);
            }
            assertThat(plan.visits().get(8).date()).isEqualTo(LocalDate.of(2026, 3, 10));
            assertThat(plan.visits()).allMatch(visit -> visit.scores().size() == 120);
        }
    }

    @Test
    void sixteenCowsAreFilmedAtTheLastTwoVisitsOnly() {
        for (HerdPlan plan : HERDS) {
            for (HerdVisit visit : plan.visits()) {
                assertThat(new HashSet<>(visit.filmed())).hasSize(visit.ordinal() >= 8 ? 16 : 0);
            }
        }
    }

    /** Lame at visit 8, something found when she was lifted, scored lower at visit 9: a few of these are on film. */
    @Test
    void cowsThatGotSounderAfterTheChuteAreOnFilm() {
        int herdsWithSome = 0;
        for (HerdPlan plan : HERDS) {
            HerdVisit before = plan.visits().get(7);
            HerdVisit last = plan.visits().get(8);
            List<String> sounder = new ArrayList<>();
            for (HerdScore was : before.scores()) {
                boolean lower = last.scores().stream()
                        .anyMatch(now ->
                                now.cow().equals(was.cow()) && now.scorer().equals("A") && now.level() < was.level());
                boolean found = before.lifts().stream()
                        .anyMatch(lift -> lift.cow().equals(was.cow())
                                && lift.feet().stream()
                                        .anyMatch(foot -> !foot.findings().isEmpty()));
                if (was.scorer().equals("A") && was.level() >= 2 && lower && found) {
                    sounder.add(was.cow());
                }
            }
            herdsWithSome += sounder.isEmpty() ? 0 : 1;
            assertThat(before.filmed().stream().filter(sounder::contains).count())
                    .isGreaterThanOrEqualTo(Math.min(3, sounder.size()));
        }
        assertThat(herdsWithSome).isPositive();
    }

    @Test
    void lesionsBeginByTheirShares() {
        List<HerdOnset> all = new ArrayList<>();
        HERDS.forEach(plan -> all.addAll(plan.lesionsBegun()));
        holds("onset", all.size(), 40L * 60 * 9, 4 * 0.05);
        holds(
                "hind outer",
                all.stream()
                        .filter(o -> !o.leg().isFore() && o.claw().equals("lateral"))
                        .count(),
                all.size(),
                .60);
        holds(
                "hind inner",
                all.stream()
                        .filter(o -> !o.leg().isFore() && o.claw().equals("medial"))
                        .count(),
                all.size(),
                .15);
        holds(
                "fore inner",
                all.stream()
                        .filter(o -> o.leg().isFore() && o.claw().equals("medial"))
                        .count(),
                all.size(),
                .15);
        holds("left", all.stream().filter(o -> o.leg().isLeft()).count(), all.size(), .5);
        String[] codes = {"SU", "WL", "DD", "SH", "HHE", "IP", "TU"};
        double[] weights = {22, 22, 24, 14, 10, 5, 3};
        for (int i = 0; i < codes.length; i++) {
            String code = codes[i];
            holds(code, all.stream().filter(o -> o.code().startsWith(code)).count(), all.size(), weights[i] / 100);
        }
    }

    @Test
    void liftsFollowTheScoresOfA() {
        long lame = 0;
        long lameLifted = 0;
        long soundNotDrawn = 0;
        long routine = 0;
        long controls = 0;
        long refused = 0;
        for (HerdPlan plan : HERDS) {
            for (HerdVisit visit : plan.visits()) {
                List<HerdScore> a = visit.scores().stream()
                        .filter(s -> s.scorer().equals("A"))
                        .toList();
                long lameHere = a.stream().filter(s -> s.level() >= 2).count();
                lame += lameHere;
                lameLifted += count(visit, HerdLift.Why.LAME);
                routine += count(visit, HerdLift.Why.ROUTINE);
                controls += count(visit, HerdLift.Why.CONTROL);
                soundNotDrawn += 60 - lameHere - 3;
                assertThat(count(visit, HerdLift.Why.CONTROL)).isEqualTo(3);
                Set<String> once = new HashSet<>();
                for (HerdLift lift : visit.lifts()) {
                    assertThat(once.add(lift.cow())).as("one card a visit").isTrue();
                    assertThat(ChronoUnit.DAYS.between(visit.date(), lift.date()))
                            .isBetween(1L, 5L);
                    int level = a.stream()
                            .filter(s -> s.cow().equals(lift.cow()))
                            .findFirst()
                            .orElseThrow()
                            .level();
                    if (lift.why() == HerdLift.Why.CONTROL) {
                        assertThat(level).isLessThan(2);
                        assertThat(lift.chance().orElseThrow()).isEqualTo(3.0 / (60 - lameHere));
                        refused += lift.refused() ? 1 : 0;
                    } else {
                        assertThat(lift.chance()).isEmpty();
                        assertThat(lift.refused()).isFalse();
                    }
                    assertThat(lift.feet())
                            .hasSize(
                                    lift.refused()
                                            ? 0
                                            : lift.why() == HerdLift.Why.BLOCK_OFF
                                                    ? lift.feet().size()
                                                    : 4);
                }
            }
        }
        holds("lame lifted", lameLifted, lame, .85);
        holds("routine", routine, soundNotDrawn, .03);
        holds("refused", refused, controls, 1.0 / 15);
    }

    private static long count(HerdVisit visit, HerdLift.Why why) {
        return visit.lifts().stream().filter(l -> l.why() == why).count();
    }

    @Test
    void aBlockSitsOnTheSoundClawAndComesOffAfterFourWeeks() {
        int on = 0;
        int off = 0;
        for (HerdPlan plan : HERDS) {
            for (HerdVisit visit : plan.visits()) {
                for (HerdLift lift : visit.lifts()) {
                    for (HerdFoot foot : lift.feet()) {
                        boolean inner = foot.actions().contains("block-inner");
                        boolean outer = foot.actions().contains("block-outer");
                        if (inner || outer) {
                            on++;
                            String sick = inner ? "lateral" : "medial";
                            assertThat(foot.findings())
                                    .anyMatch(f -> f.claw().equals(sick)
                                            && List.of("SU", "TU", "WLA").contains(f.code()));
                        }
                        off += foot.actions().contains("block-off") ? 1 : 0;
                    }
                }
            }
        }
        assertThat(on).isGreaterThan(40 * 5);
        assertThat(off).isGreaterThan(on / 2).isLessThanOrEqualTo(on + 40);
    }

    @Test
    void scorerBSeesMoreThanA() {
        // B adds .25 on the line: walker.md section 4. Over all herds B's mean level must lie above A's.
        for (HerdPlan plan : HERDS) {
            double a = 0;
            double b = 0;
            for (HerdVisit visit : plan.visits()) {
                for (HerdScore score : visit.scores()) {
                    if (score.scorer().equals("A")) {
                        a += score.level();
                    } else {
                        b += score.level();
                    }
                }
            }
            assertThat(b).isGreaterThan(a);
        }
    }

    @Test
    void prevalenceFallsOnceScoresDecide() {
        double first = HERDS.stream().mapToLong(p -> lameByA(p, 0)).average().orElseThrow();
        double last = HERDS.stream().mapToLong(p -> lameByA(p, 8)).average().orElseThrow();
        assertThat(last).isLessThan(0.7 * first);
    }

    private static long lameByA(HerdPlan plan, int visit) {
        return plan.visits().get(visit).scores().stream()
                .filter(s -> s.scorer().equals("A") && s.level() >= 2)
                .count();
    }

    @Test
    void sameSeedSameHerdOtherSeedOtherHerd() {
        assertThat(HerdPlan.of(3)).isEqualTo(HerdPlan.of(3)).isNotEqualTo(HerdPlan.of(4));
        HerdPlan plan = HerdPlan.of(3);
        assertThat(HerdTruth.of(plan, 20).json(plan))
                .isEqualTo(HerdTruth.of(plan, 20).json(plan));
    }

    @Test
    void truthIsTheSameFromOtherHerds() {
        HerdTruth one = HerdTruth.of(HerdPlan.of(1), 150);
        HerdTruth other = HerdTruth.of(HerdPlan.of(2), 150);
        // 150 herds of 540 cow-visits each, 40 % with a lesion: the standard error of a difference is about .006.
        for (String scorer : List.of("A", "B")) {
            assertThat(one.sensitivity().get(scorer))
                    .isCloseTo(other.sensitivity().get(scorer), within(0.03));
            assertThat(one.specificity().get(scorer))
                    .isCloseTo(other.specificity().get(scorer), within(0.03));
        }
        assertThat(one.sensitivity().get("B")).isGreaterThan(one.sensitivity().get("A"));
        assertThat(one.specificity().get("B")).isLessThan(one.specificity().get("A"));
        assertThat(one.scorerShift()).isBetween(0.15, 0.30);
    }

    @Test
    void gateReadsCarryTheClockErrorAndTheFaults() {
        long walks = 0;
        long missed = 0;
        long again = 0;
        for (HerdPlan plan : HERDS) {
            List<GateReads.Walk> past = new ArrayList<>();
            Instant start = Instant.parse("2026-03-10T06:10:00Z");
            for (String cow : plan.visits().get(8).filmed()) {
                start = start.plusSeconds(9);
                past.add(new GateReads.Walk(cow, start));
            }
            GateReads gate = GateReads.of(plan, 9, past);
            walks += past.size();
            missed += gate.unread().size();
            again += gate.reads().stream().filter(r -> r.mark().equals("again")).count();
            for (GateReads.Read read : gate.reads()) {
                if (read.mark().equals("ok")) {
                    Instant camera = past.stream()
                            .filter(w -> w.cow().equals(read.cow()))
                            .findFirst()
                            .orElseThrow()
                            .middle();
                    double error = ChronoUnit.MILLIS.between(camera, read.at()) / 1e3;
                    // Gate delay has a standard deviation of .4 s; drift over two minutes is a few milliseconds.
                    assertThat(error).isCloseTo(gate.clockOffsetS(), within(2.5));
                }
            }
            assertThat(gate).isEqualTo(GateReads.of(plan, 9, past));
        }
        holds("missed", missed, walks, GateReads.MISSED);
        holds("again", again, walks - missed, GateReads.DOUBLED);
    }

    @Test
    void filmsShowEveryFilmedCowOnceAndInStep() {
        HerdPlan plan = HERDS.get(0);
        assertThat(FilmPlans.of(plan, plan.visits().get(0))).isEmpty();
        for (int v = 7; v < 9; v++) {
            HerdVisit visit = plan.visits().get(v);
            List<RecordingPlan> films = FilmPlans.of(plan, visit);
            assertThat(films).hasSize(2);
            List<String> shown = new ArrayList<>();
            for (RecordingPlan film : films) {
                assertThat(film.lengthS()).isBetween(45.0, 110.0);
                film.walks().forEach(w -> shown.add(w.traits().cowNumber()));
                for (int i = 1; i < film.walks().size(); i++) {
                    assertThat(film.walks().get(i).enterTimeS()
                                    - film.walks().get(i - 1).enterTimeS())
                            .isGreaterThan(5);
                }
                assertThat(film.startedAt().atZone(plan.zone()).toLocalDate()).isEqualTo(visit.date());
            }
            assertThat(shown).isEqualTo(visit.filmed());
            assertThat(films).isEqualTo(FilmPlans.of(plan, visit));
        }
    }
}
