package levelback.scoring.gait;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.Function;
import levelback.scoring.value.Leg;
import org.junit.jupiter.api.Test;

/** What the frame period does to a mean, against propagation of distributions (JCGM 101:2008): every event drawn anew. */
class GaitDrawnErrorTest {

    private static final double HZ = 25;

    @Test
    void thePropagatedFramePeriodIsTheSpreadOfDrawnEvents() {
        holds(r -> r.all().strideTimeS());
        holds(r -> r.all().stanceTimeS());
        holds(r -> r.all().swingTimeS());
        holds(r -> r.all().strideLengthM(), 0);
        holds(GaitResult::cadencePerMin);
    }

    private static void holds(Function<GaitResult, GaitFigure> figure) {
        holds(figure, Double.NaN);
    }

    private static void holds(Function<GaitResult, GaitFigure> figure, double expected) {
        Random random = new Random(20);
        GaitQuestion question = GaitQuestion.plain().atFrameRate(HZ);
        double stated =
                figure.apply(Gait.of(walk(random, 0), List.of(), question)).timing();
        if (!Double.isNaN(expected)) {
            assertThat(stated).isCloseTo(expected, within(1e-12));
            return;
        }
        int runs = 4_000;
        double sum = 0;
        double squares = 0;
        double first = figure.apply(Gait.of(walk(random, 0), List.of(), question))
                .estimate()
                .value()
                .orElseThrow();
        for (int run = 0; run < runs; run++) {
            double off = figure.apply(Gait.of(walk(random, 1 / HZ), List.of(), question))
                            .estimate()
                            .value()
                            .orElseThrow()
                    - first;
            sum += off;
            squares += off * off;
        }
        double sd = Math.sqrt(squares / runs - Math.pow(sum / runs, 2));
        // The standard error of a standard deviation from 4,000 draws is 1.1 %.
        assertThat(stated / sd).isCloseTo(1, within(0.04));
    }

    private static List<Footfall> walk(Random random, double frameS) {
        List<Footfall> falls = new ArrayList<>();
        Leg[] order = {Leg.LH, Leg.LF, Leg.RH, Leg.RF};
        for (int stride = 0; stride < 4; stride++) {
            for (int i = 0; i < 4; i++) {
                double at = 1.3 * (stride + 0.25 * i);
                OptionalDouble x = OptionalDouble.of(1.1 * at);
                falls.add(Footfall.of(at + frameS * (random.nextDouble() - 0.5), order[i], Footfall.Event.DOWN, x));
                falls.add(
                        Footfall.of(at + 0.85 + frameS * (random.nextDouble() - 0.5), order[i], Footfall.Event.UP, x));
            }
        }
        return List.copyOf(falls);
    }
}
