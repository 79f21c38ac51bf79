package levelback.scoring.herd;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import levelback.scoring.proof.ScoreRow;
import levelback.scoring.value.Leg;
import org.junit.jupiter.api.Test;

class VisitPrevalenceTest {

    private static final LocalDate DAY = LocalDate.of(2026, 3, 2);

    /** 3 of 50: Wilson .020615 to .162171 (R's prop.test without continuity correction, check values of proportions). */
    @Test
    void countsCowsOnceAndGivesWilsonsInterval() {
        List<ScoreRow> rows = new ArrayList<>();
        for (int i = 0; i < 50; i++) {
            rows.add(new ScoreRow("c" + i, DAY, i < 3 ? i + 1 : 0, "A", Optional.of(Leg.LH)));
            rows.add(new ScoreRow("c" + i, DAY, i == 0 ? 2 : 0, "A", Optional.of(Leg.RH)));
        }
        rows.add(new ScoreRow("c9", DAY.minusDays(14), 0, "A", Optional.empty()));
        List<VisitPrevalence> visits = VisitPrevalence.of(rows, 2, 3, .95);
        assertThat(visits).extracting(VisitPrevalence::date).containsExactly(DAY.minusDays(14), DAY);
        VisitPrevalence visit = visits.get(1);
        assertThat(visit.scored()).isEqualTo(50);
        assertThat(visit.lame()).isEqualTo(3);
        assertThat(visit.severe()).isEqualTo(1);
        assertThat(visit.prevalence().interval().orElseThrow().low()).isCloseTo(.020614970349, within(1e-9));
        assertThat(visit.prevalence().interval().orElseThrow().high()).isCloseTo(.162170916888, within(1e-9));
    }
}
