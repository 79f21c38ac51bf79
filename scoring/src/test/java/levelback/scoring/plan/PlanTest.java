package levelback.scoring.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class PlanTest {

    /**
     * agreement/panel-complete.json, pair Amber and Birch: kappas and standard errors of Fleiss, Cohen & Everitt 1969 by R's
     * vcd 1.4-11.
     */
    @Test
    void theVarianceBehindTheWidthIsThatOfFleissCohenAndEveritt() {
        int[][] table = {{12, 8, 4, 0}, {7, 3, 6, 1}, {3, 1, 7, 2}, {0, 3, 1, 2}};
        int[] a = new int[60];
        int[] b = new int[60];
        int n = 0;
        for (int i = 0; i < 4; i++) {
            for (int j = 0; j < 4; j++) {
                for (int k = 0; k < table[i][j]; k++) {
                    a[n] = i;
                    b[n++] = j;
                }
            }
        }
        for (boolean quadratic : new boolean[] {true, false}) {
            double[] parts = new double[60];
            double kappa = ExpectedKappaWidth.pair(a, b, 4, quadratic, parts);
            assertThat(kappa).isCloseTo(quadratic ? .42880794702 : .286075949367, within(1e-9));
            double mean = 0;
            for (double part : parts) {
                mean += part / 60;
            }
            double squares = 0;
            for (double part : parts) {
                squares += (part - mean) * (part - mean);
            }
            assertThat(Math.sqrt(squares) / 60).isCloseTo(quadratic ? .10024192946 : .0921846064152, within(1e-9));
        }
    }

    /** A width goes with one over the root of the clips, and more scorers narrow it; no source needed. */
    @Test
    void fourTimesTheClipsHalveTheWidthAndTheSeedDecidesTheBytes() {
        double[] shares = {.42, .28, .2, .1};
        ExpectedKappaWidth few = ExpectedKappaWidth.of(50, 2, shares, .7, true, .95, 400, 1);
        ExpectedKappaWidth many = ExpectedKappaWidth.of(200, 2, shares, .7, true, .95, 400, 1);
        ExpectedKappaWidth five = ExpectedKappaWidth.of(50, 5, shares, .7, true, .95, 400, 1);
        assertThat(few.width() / many.width()).isCloseTo(2, within(.15));
        assertThat(five.width()).isLessThan(few.width());
        assertThat(few.kappa()).isBetween(.5, .7);
        assertThat(ExpectedKappaWidth.of(50, 2, shares, .7, true, .95, 400, 1)).isEqualTo(few);
    }

    /** z² · .9 · .1 / .05² = 138.3 cows with a lesion; at a prevalence of a quarter 553.2 in all (formula by hand). */
    @Test
    void cowsForASensitivityAndASpecificity() {
        assertThat(SensitivitySampleSize.forSensitivity(.9, .05, .25, .95)).isEqualTo(554);
        assertThat(SensitivitySampleSize.forSpecificity(.9, .05, .75, .95)).isEqualTo(554);
    }
}
