package levelback.player.stage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import levelback.scoring.value.Leg;
import org.junit.jupiter.api.Test;

class StridesTest {

    /** Stances as on the printed diagram of the look: RH stands 0.88 s where LH stands 1.04 s, strides of 1.41 s. */
    private static final List<Stance> STANCES = List.of(
            new Stance(Leg.LH, 1_410_000, 2_450_000, true),
            new Stance(Leg.LH, 0, 1_040_000, true),
            new Stance(Leg.LH, 2_820_000, 3_860_000, false),
            new Stance(Leg.RH, 705_000, 1_585_000, true),
            new Stance(Leg.RH, 2_115_000, 2_995_000, true));

    @Test
    void aStrideRunsFromStrikeToTheNextStrikeOfTheSameLeg() {
        assertThat(Strides.of(STANCES, Leg.LH))
                .containsExactly(new Strides.Stride(0, 1_410_000), new Strides.Stride(1_410_000, 2_820_000));
        assertThat(Strides.of(STANCES, Leg.LF)).isEmpty();
    }

    @Test
    void theStrideAtAMomentIsTheOneAroundItOrTheNearest() {
        assertThat(Strides.at(STANCES, Leg.LH, 1_500_000)).contains(new Strides.Stride(1_410_000, 2_820_000));
        assertThat(Strides.at(STANCES, Leg.LH, -5)).contains(new Strides.Stride(0, 1_410_000));
        assertThat(Strides.at(STANCES, Leg.LH, 9_000_000)).contains(new Strides.Stride(1_410_000, 2_820_000));
        assertThat(Strides.at(STANCES, Leg.RF, 0)).isEmpty();
    }

    @Test
    void theGhostIsThePartnersStanceSoThatAShortOneShows() {
        assertThat(Strides.ghostUs(STANCES, STANCES.get(3))).contains(1_040_000L);
        assertThat(Strides.ghostUs(STANCES, STANCES.get(0))).contains(880_000L);
        assertThat(Strides.ghostUs(List.of(STANCES.get(0)), STANCES.get(0))).isEqualTo(Optional.empty());
    }

    @Test
    void aFootCannotLiftBeforeItLands() {
        assertThatThrownBy(() -> new Stance(Leg.LF, 10, 10, true)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void aMomentHasOnePlaceOnTheStripAndAPlaceOneMoment() {
        StripScale scale = new StripScale(7_500_000, 12_500_000, 84, 884);
        assertThat(scale.x(10_000_000)).isEqualTo(484);
        assertThat(scale.timeUs(484)).isEqualTo(10_000_000);
        assertThat(scale.timeUs(0)).isEqualTo(7_500_000);
        assertThat(scale.timeUs(5_000)).isEqualTo(12_500_000);
        // 800 px for 5 s: half a second is 80 px, the first step that is at least 70 px.
        assertThat(scale.tickUs()).isEqualTo(500_000);
    }
}
