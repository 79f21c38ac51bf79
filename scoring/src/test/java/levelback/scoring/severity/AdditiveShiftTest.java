package levelback.scoring.severity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import levelback.scoring.value.Estimate;
import levelback.scoring.value.Interval;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Held against check-values/agreement: R 4.2.2 stats (lm) and numpy, which agree to 1e-6. */
class AdditiveShiftTest {

    @ParameterizedTest
    @ValueSource(
            strings = {"panel-complete", "panel-missing", "panel-halves", "one-level", "perfect", "one-scorer-constant"
            })
    void isTheLeastSquaresOfTheReference(String name) {
        List<Estimate> shifts = AdditiveShift.of(PanelFiles.panel(name), 0.95);
        List<Double> values = PanelFiles.ofScorers(name, "shift/value");
        List<Double> lows = PanelFiles.ofScorers(name, "shift/low");
        List<Double> highs = PanelFiles.ofScorers(name, "shift/high");
        assertThat(shifts).hasSameSizeAs(values);
        for (int s = 0; s < shifts.size(); s++) {
            Interval interval = shifts.get(s).interval().orElseThrow();
            assertThat(shifts.get(s).value().orElseThrow()).isCloseTo(values.get(s), within(1e-9));
            assertThat(interval.low()).isCloseTo(lows.get(s), within(1e-9));
            assertThat(interval.high()).isCloseTo(highs.get(s), within(1e-9));
        }
    }

    @Test
    void isExactlyNoughtWhereAllAgree() {
        assertThat(AdditiveShift.of(PanelFiles.panel("perfect"), 0.95)).allSatisfy(shift -> {
            assertThat(shift.value()).hasValue(0);
            assertThat(shift.interval()).contains(new Interval(0, 0));
        });
    }

    @Test
    void saysThatScorersWithoutASharedClipCannotBeCompared() {
        assertThat(AdditiveShift.of(PanelFiles.panel("no-overlap"), 0.95)).allSatisfy(shift -> {
            assertThat(shift.value()).isEmpty();
            assertThat(shift.why().orElseThrow()).startsWith("No shared clip joins");
        });
    }

    @Test
    void saysThatOneScorerHasNoPanel() {
        assertThat(AdditiveShift.of(PanelFiles.panel("one-scorer"), 0.95))
                .allSatisfy(shift -> assertThat(shift.why().orElseThrow()).startsWith("One scorer alone"));
    }

    @Test
    void givesNoIntervalWhereNothingIsLeftForTheError() {
        Panel oneClip = new Panel(
                List.of("a", "b"), List.of(1.0, 2.0), 1, new int[] {0, 0}, new int[] {0, 1}, new int[] {0, 1});
        List<Estimate> shifts = AdditiveShift.of(oneClip, 0.95);
        assertThat(shifts.get(0).value()).hasValue(-0.5);
        assertThat(shifts.get(1).value()).hasValue(0.5);
        assertThat(shifts).allSatisfy(shift -> {
            assertThat(shift.interval()).isEmpty();
            assertThat(shift.why()).isPresent();
        });
    }
}
