package levelback.scoring.agreement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What one clip does to a figure, against the figure itself with a little more and a little less of that clip. */
class InfluenceTest {

    private static final double STEP = 1e-4;

    @ParameterizedTest
    @EnumSource(Alpha.Metric.class)
    void ofAlphaIsItsDerivative(Alpha.Metric metric) {
        Ratings ratings = panel(80, .25);
        LevelCounts counts = LevelCounts.of(ratings.session(1), ratings.levels().length);
        Alpha alpha = new Alpha(counts, ratings.levels(), metric);
        double[] influence = alpha.influence(counts.clips());
        for (int k = 0; k < counts.kinds(); k++) {
            assertThat(influence[k]).isCloseTo(slope(alpha, counts.clips(), k), within(1e-7));
        }
        assertThat(Arrays.stream(influence).map(Math::abs).max().orElseThrow()).isGreaterThan(1e-3);
    }

    @Test
    void ofConcordanceIsItsDerivative() {
        Ratings ratings = panel(60, 0);
        Complete complete = Complete.of(ratings.session(1), true);
        double[] clips = new double[complete.clips()];
        Arrays.fill(clips, 1);
        Concordance w = new Concordance(complete, ratings.levels().length);
        double[] influence = w.influence(clips);
        for (int c = 0; c < clips.length; c++) {
            assertThat(influence[c]).isCloseTo(slope(w, clips, c), within(1e-7));
        }
        assertThat(Arrays.stream(influence).map(Math::abs).max().orElseThrow()).isGreaterThan(1e-3);
    }

    /** Past the bound for drawing the limits are linearised; just below it, drawn. Both must tell the same width. */
    @Test
    void aboveFiveThousandClipsTheLinearisedLimitsContinueTheDrawnOnes() {
        AgreementResult drawn = Agreement.of(panel(5_000, 0), new AgreementQuestion(.95, 1, 400, false));
        AgreementResult linear = Agreement.of(panel(5_001, 0), new AgreementQuestion(.95, 1, 400, false));
        assertThat(drawn.kendallW().method()).isEqualTo(Resamples.METHOD);
        assertThat(linear.kendallW().method()).isEqualTo(Resamples.LINEAR);
        for (int i = 0; i < 2; i++) {
            double a = width(i == 0 ? drawn.kendallW() : drawn.alphaOrdinal());
            double b = width(i == 0 ? linear.kendallW() : linear.alphaOrdinal());
            assertThat(a / b).isBetween(.85, 1.15);
        }
    }

    private static double width(levelback.scoring.value.Estimate e) {
        return e.interval().orElseThrow().high() - e.interval().orElseThrow().low();
    }

    private static double slope(Resamples.Statistic statistic, double[] clips, int at) {
        double[] more = clips.clone();
        double[] less = clips.clone();
        more[at] += STEP;
        less[at] -= STEP;
        return (statistic.value(more).orElseThrow() - statistic.value(less).orElseThrow()) / (2 * STEP);
    }

    private static Ratings panel(int clips, double missing) {
        SplittableRandom random = new SplittableRandom(7);
        double[] levels = {0, 1, 2.5, 4};
        List<Rating> all = new ArrayList<>();
        for (int c = 0; c < clips; c++) {
            double lame = 4 * random.nextDouble();
            for (int s = 0; s < 4; s++) {
                int level = (int) Math.max(0, Math.min(3, Math.round(lame + 2 * random.nextDouble() - 1.3 + s * .2)));
                if (random.nextDouble() >= missing) {
                    all.add(Rating.of("s" + s, "c" + c, levels[level]));
                }
            }
        }
        return Ratings.of(all);
    }
}
