package levelback.scoring.value;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;

class MediaTimeTest {

    /** FFmpeg documents av_rescale_q as rounding to nearest, halves away from zero; the cases are worked by hand. */
    @Test
    void roundsToTheNearestMicrosecondAwayFromZeroAtHalf() {
        assertThat(new MediaTime(1, new TimeBase(1, 90_000)).timeUs()).isEqualTo(11);
        assertThat(new MediaTime(1001, new TimeBase(1, 30_000)).timeUs()).isEqualTo(33_367);
        assertThat(new MediaTime(1, new TimeBase(1, 2_000_000)).timeUs()).isEqualTo(1);
        assertThat(new MediaTime(-1, new TimeBase(1, 2_000_000)).timeUs()).isEqualTo(-1);
        assertThat(new MediaTime(-1, new TimeBase(1, 90_000)).timeUs()).isEqualTo(-11);
    }

    /** 26.5 hours at 90 kHz is where a 33-bit stamp wraps; a recorder that runs for weeks goes on beyond it. */
    @Test
    void holdsMoreThanA33BitStamp() {
        assertThat(new MediaTime(1L << 40, new TimeBase(1, 90_000)).timeUs()).isEqualTo(12_216_795_864_178L);
    }

    @Test
    void comparesAcrossClocks() {
        assertThat(new MediaTime(90_000, new TimeBase(1, 90_000)))
                .isEqualByComparingTo(new MediaTime(25, new TimeBase(1, 25)));
        assertThat(new MediaTime(1, new TimeBase(1, 3))).isLessThan(new MediaTime(334, new TimeBase(1, 1000)));
    }

    @Property
    void keepsTheOrderOfTicks(
            @ForAll @LongRange(min = -1L << 40, max = 1L << 40) long ticks,
            @ForAll @IntRange(min = 1, max = 100_000) int denominator) {
        TimeBase timeBase = new TimeBase(1, denominator);
        assertThat(new MediaTime(ticks, timeBase).timeUs())
                .isLessThanOrEqualTo(new MediaTime(ticks + 1, timeBase).timeUs());
    }

    @Test
    void refusesAClockThatStandsStill() {
        assertThatThrownBy(() -> new TimeBase(0, 25))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("0/25");
        assertThatThrownBy(() -> TimeBase.parse("25"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("25");
        assertThat(TimeBase.parse("1/15360")).isEqualTo(new TimeBase(1, 15_360)).hasToString("1/15360");
    }
}
