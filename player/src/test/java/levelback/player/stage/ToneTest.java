package levelback.player.stage;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class ToneTest {

    @Test
    void asFilmedChangesNoValue() {
        int[] table = Tone.AS_FILMED.table();
        for (int v = 0; v < 256; v++) {
            assertThat(table[v]).isEqualTo(v);
        }
    }

    @Test
    void threeStepsOfLightBringAQuarterUpToAHalf() {
        // By hand: 64/255 = 0.25098, its square root 0.50098, of 255: 127.75. Black and white stay.
        int[] table = new Tone(3, 0).table();
        assertThat(table[64]).isEqualTo(128);
        assertThat(table[0]).isZero();
        assertThat(table[255]).isEqualTo(255);
    }

    @Test
    void threeStepsOfContrastDoubleTheDistanceFromTheMiddle() {
        // By hand: (100 - 127.5) 2 + 127.5 = 72.5 and (150 - 127.5) 2 + 127.5 = 172.5.
        int[] table = new Tone(0, 3).table();
        assertThat(table[100]).isBetween(72, 73);
        assertThat(table[150]).isBetween(172, 173);
        assertThat(table[20]).isZero();
        assertThat(table[240]).isEqualTo(255);
    }

    @Test
    void stepsStopAtTheMost() {
        assertThat(new Tone(99, -99)).isEqualTo(new Tone(Tone.MOST, -Tone.MOST));
        assertThat(new Tone(5, 0).plus(3, 1)).isEqualTo(new Tone(6, 1));
    }
}
