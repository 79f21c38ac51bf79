package levelback.scoring.value;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class EstimateTest {

    @Test
    void neverHoldsNaNOrInfinity() {
        assertThatThrownBy(() -> Estimate.of(Double.NaN, 0, 1, 3, "m")).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Estimate.of(0.5, 0, Double.POSITIVE_INFINITY, 3, "m"))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Estimate.of(0.5, 0.6, 0.4, 3, "m")).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void saysWhyWhenSomethingIsMissing() {
        assertThatThrownBy(() -> new Estimate(OptionalDouble.empty(), Optional.empty(), 0, "m", Optional.empty()))
                .isInstanceOf(IllegalArgumentException.class);
        assertThat(Estimate.missing(0, "m", "nobody was lifted").why()).contains("nobody was lifted");
    }

    @Test
    void knowsLegsByPairAndSide() {
        assertThat(Leg.LH.partner()).isEqualTo(Leg.RH);
        assertThat(Leg.LH.sameSide()).isEqualTo(Leg.LF);
        for (Leg leg : Leg.values()) {
            assertThat(leg.partner().partner()).isEqualTo(leg);
            assertThat(leg.sameSide().isLeft()).isEqualTo(leg.isLeft());
            assertThat(leg.partner().isFore()).isEqualTo(leg.isFore());
        }
    }
}
