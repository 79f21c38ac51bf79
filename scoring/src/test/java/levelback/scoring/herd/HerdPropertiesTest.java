package levelback.scoring.herd;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.Random;
import levelback.scoring.proof.ScoreRow;
import levelback.scoring.proof.TrimRow;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

/** What must hold whatever the herd looks like (rules of the definitions; no source needed). */
class HerdPropertiesTest {

    private static final LocalDate FIRST = LocalDate.of(2026, 3, 2);
    private static final HerdQuestion QUESTION =
            new HerdQuestion(2, HerdQuestion.severeAbove(2), OptionalLong.empty(), .95);

    private record Herd(List<ScoreRow> scores, List<TrimRow> trims) {
        HerdFigures figures() {
            return HerdFigures.of(scores, Optional.of(trims), QUESTION);
        }
    }

    @Property(tries = 150)
    void theOrderOfTheRowsPlaysNoPart(@ForAll long seed, @ForAll @IntRange(min = 1, max = 25) int cows) {
        Herd herd = herd(seed, cows);
        List<ScoreRow> scores = new ArrayList<>(herd.scores());
        List<TrimRow> trims = new ArrayList<>(herd.trims());
        Collections.shuffle(scores, new Random(seed + 1));
        Collections.shuffle(trims, new Random(seed + 2));
        assertThat(new Herd(scores, trims).figures()).isEqualTo(herd.figures());
    }

    @Property(tries = 150)
    void everyCowScoredGoesOnToExactlyOneBoxAndBothCountsOfAChangeAgree(
            @ForAll long seed, @ForAll @IntRange(min = 1, max = 25) int cows) {
        Herd herd = herd(seed, cows);
        HerdFigures figures = herd.figures();
        assertThat(figures.changes()).hasSize(figures.visits().size() - 1);
        for (int v = 0; v < figures.changes().size(); v++) {
            VisitChange c = figures.changes().get(v);
            VisitPrevalence then = figures.visits().get(v);
            VisitPrevalence now = figures.visits().get(v + 1);
            long both = c.stillLame() + c.recovered() + c.newlyLame() + c.stillSound();
            assertThat(both + c.notSeen()).isEqualTo(then.scored());
            assertThat(both + c.notSeenBefore()).isEqualTo(now.scored());
            assertThat(VisitChange.between(herd.scores(), c.from(), c.to(), 2)).isEqualTo(c);
        }
        assertThat(figures.changes().stream().mapToLong(VisitChange::newCases).sum())
                .isEqualTo(figures.newCases().newCases());
        assertThat(figures.lameCows().stream().mapToLong(LameRecord::newCases).sum())
                .isEqualTo(figures.newCases().newCases());
    }

    @Property(tries = 150)
    void aCowAlwaysSoundAddsDaysAtRiskAndNoCase(@ForAll long seed, @ForAll @IntRange(min = 1, max = 25) int cows) {
        Herd herd = herd(seed, cows);
        List<ScoreRow> more = new ArrayList<>(herd.scores());
        for (int v = 0; v < 3; v++) {
            more.add(new ScoreRow("sound", FIRST.plusDays(7L * v), 0, "A", Optional.empty()));
        }
        HerdFigures before = herd.figures();
        HerdFigures after = new Herd(more, herd.trims()).figures();
        assertThat(after.newCases().newCases()).isEqualTo(before.newCases().newCases());
        assertThat(after.newCases().riskDays()).isEqualTo(before.newCases().riskDays() + 7);
        assertThat(after.chronic()).isEqualTo(before.chronic());
        assertThat(after.cured()).isEqualTo(before.cured());
        assertThat(after.lameCows()).isEqualTo(before.lameCows());
    }

    @Property(tries = 100)
    void otherNamesOfTheCowsChangeNoCount(@ForAll long seed, @ForAll @IntRange(min = 1, max = 25) int cows) {
        Herd herd = herd(seed, cows);
        Herd renamed = new Herd(
                herd.scores().stream()
                        .map(r -> new ScoreRow(other(r.cow()), r.date(), r.score(), r.scorer(), r.leg()))
                        .toList(),
                herd.trims().stream()
                        .map(r -> new TrimRow(other(r.cow()), r.date(), r.leg(), r.lesion(), r.stage(), r.chance()))
                        .toList());
        HerdFigures a = herd.figures();
        HerdFigures b = renamed.figures();
        assertThat(b.visits()).isEqualTo(a.visits());
        assertThat(b.changes()).isEqualTo(a.changes());
        assertThat(b.newCases().newCases()).isEqualTo(a.newCases().newCases());
        assertThat(b.newCases().riskDays()).isEqualTo(a.newCases().riskDays());
        assertThat(b.chronic()).isEqualTo(a.chronic());
        assertThat(b.cured()).isEqualTo(a.cured());
        assertThat(b.daysToTreatment()).isEqualTo(a.daysToTreatment());
    }

    private static String other(String cow) {
        return new StringBuilder(cow + "x").reverse().toString();
    }

    private static Herd herd(long seed, int cows) {
        Random random = new Random(seed);
        List<ScoreRow> scores = new ArrayList<>();
        List<TrimRow> trims = new ArrayList<>();
        scores.add(new ScoreRow("0", FIRST, 1, "A", Optional.empty()));
        for (int c = 0; c < cows; c++) {
            for (int v = 0; v < 8; v++) {
                LocalDate day = FIRST.plusDays(14L * v);
                for (int s = random.nextInt(3); s > 0; s--) {
                    scores.add(new ScoreRow("" + c, day, random.nextInt(4), "S" + s, Optional.empty()));
                }
                if (random.nextInt(6) == 0) {
                    trims.add(new TrimRow(
                            "" + c,
                            day.plusDays(random.nextInt(9)),
                            Optional.empty(),
                            random.nextBoolean() ? "NONE" : "SU",
                            "",
                            OptionalDouble.empty()));
                }
            }
        }
        return new Herd(scores, trims);
    }
}
