package levelback.scoring.herd;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;
import levelback.scoring.proof.ScoreRow;
import levelback.scoring.proof.TrimRow;
import levelback.scoring.value.Estimate;
import levelback.scoring.value.Interval;
import org.junit.jupiter.api.Test;

/** Held against R 4.2.2, survival 3.5-3 (survfit, conf.type log-log) and cases counted by hand. */
class HerdOverVisitsTest {

    /** kaplan-meier.json, case 1: the upper limit is not reached. */
    @Test
    void medianOfTwelveCowsAsSurvfit() {
        DaysToTreatment days = DaysToTreatment.of(
                List.of(0L, 0L, 1L, 2L, 2L, 5L, 7L, 9L, 14L, 14L, 21L, 30L),
                List.of(true, true, true, false, true, true, true, false, true, false, true, false),
                0.95);
        assertThat(days.median().value()).hasValue(7);
        assertThat(days.median().interval()).isEmpty();
        assertThat(days.median().why()).isPresent();
        assertThat(days.median().n()).isEqualTo(12);
        assertThat(days.censored()).isEqualTo(4);
    }

    /** kaplan-meier.json, case 2: the median is not reached. */
    @Test
    void noMedianWhereMostAreNeverLifted() {
        DaysToTreatment days = DaysToTreatment.of(List.of(3L, 5L, 8L, 8L), List.of(false, true, false, false), 0.95);
        assertThat(days.median().value()).isEmpty();
        assertThat(days.median().why()).isPresent();
        assertThat(days.censored()).isEqualTo(3);
    }

    /** visits.json: median 24, log-log 14 to 45, 96 cows, 28 censored. */
    @Test
    void medianOfAHerdOverEightVisitsAsSurvfit() throws IOException {
        DaysToTreatment days = DaysToTreatment.of(scores(), trims(), 2, 0.95);
        Estimate median = days.median();
        assertThat(median.value()).hasValue(24);
        assertThat(median.interval()).contains(new Interval(14, 45));
        assertThat(median.n()).isEqualTo(96);
        assertThat(days.censored()).isEqualTo(28);
    }

    /** visits.json: 60 new cases over the whole time; each belongs to one visit. */
    @Test
    void newCasesOfAllVisitsAddUp() throws IOException {
        List<ScoreRow> scores = scores();
        List<LocalDate> days = new ArrayList<>(
                new TreeSet<>(scores.stream().map(ScoreRow::date).toList()));
        long cases = 0;
        for (int i = 1; i < days.size(); i++) {
            VisitChange change = VisitChange.between(scores, days.get(i - 1), days.get(i), 2);
            cases += change.newCases();
        }
        assertThat(cases).isEqualTo(60);
    }

    /** worked.json, counted by hand: four cows, seven visits, 3 new cases. */
    @Test
    void smallHerdCountedByHand() {
        String[] herd = {"0 1 2 2 2 0 0", "0 0 0 3 0 0 2", "2 0 2 0 0 1 1", "1 1 1 1 1 1 1"};
        List<ScoreRow> scores = new ArrayList<>();
        LocalDate first = LocalDate.of(2026, 1, 6);
        for (int c = 0; c < herd.length; c++) {
            String[] levels = herd[c].split(" ", -1);
            for (int v = 0; v < levels.length; v++) {
                scores.add(new ScoreRow(
                        "cow" + c, first.plusDays(14L * v), Double.parseDouble(levels[v]), "", Optional.empty()));
            }
        }
        long cases = 0;
        for (int v = 1; v < 7; v++) {
            cases += VisitChange.between(scores, first.plusDays(14L * v - 14), first.plusDays(14L * v), 2)
                    .newCases();
        }
        assertThat(cases).isEqualTo(3);
        assertThat(VisitChange.between(scores, first.plusDays(42), first.plusDays(56), 2))
                .isEqualTo(new VisitChange(first.plusDays(42), first.plusDays(56), 1, 1, 1, 0, 0, 2, 0, 0));
    }

    private static List<ScoreRow> scores() throws IOException {
        List<ScoreRow> rows = new ArrayList<>();
        for (String[] cells : cells("visits-scores.csv")) {
            rows.add(new ScoreRow(
                    cells[0], LocalDate.parse(cells[1]), Double.parseDouble(cells[2]), cells[3], Optional.empty()));
        }
        return rows;
    }

    private static List<TrimRow> trims() throws IOException {
        List<TrimRow> rows = new ArrayList<>();
        for (String[] cells : cells("visits-trims.csv")) {
            rows.add(new TrimRow(
                    cells[0], LocalDate.parse(cells[1]), Optional.empty(), cells[5], "", OptionalDouble.empty()));
        }
        return rows;
    }

    private static List<String[]> cells(String name) throws IOException {
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(
                Objects.requireNonNull(HerdOverVisitsTest.class.getResourceAsStream("/check-values/herd/" + name)),
                StandardCharsets.UTF_8))) {
            return reader.lines().skip(1).map(line -> line.split(",", -1)).toList();
        }
    }
}
