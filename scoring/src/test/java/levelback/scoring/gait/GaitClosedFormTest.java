package levelback.scoring.gait;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import levelback.scoring.value.Leg;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Single formulas against the check values, and what must not matter to any figure. */
class GaitClosedFormTest {

    /** check-values/gait/support-identity.json: equal duty factor, evenly phased. */
    @ParameterizedTest
    @CsvSource({
        "0.52, 0.92, 0.08, 0", "0.55, 0.8, 0.2, 0", "0.6, 0.6, 0.4, 0", "0.64, 0.44, 0.56, 0",
        "0.688, 0.248, 0.752, 0", "0.698, 0.208, 0.792, 0", "0.74, 0.04, 0.96, 0", "0.76, 0, 0.96, 0.04",
        "0.8, 0, 0.8, 0.2"
    })
    void theFeetOnTheFloorFollowFromTheDutyFactor(double duty, double two, double three, double four) {
        List<Double> got = Gait.of(walk(duty, duty, 1.4), List.of(), GaitQuestion.plain())
                .support()
                .fractions();
        assertThat(got.get(2)).isCloseTo(two, within(1e-9));
        assertThat(got.get(3)).isCloseTo(three, within(1e-9));
        assertThat(got.get(4)).isCloseTo(four, within(1e-9));
    }

    /** check-values/gait/symmetry-index.json: Robinson 1987, formula from memory. */
    @ParameterizedTest
    @CsvSource({"0.6, 0.66, 9.52380952381", "0.66, 0.6, 9.52380952381", "1, 1, 0", "0.3, 0.9, 100"})
    void theSymmetryIndexIsTheFormulas(double left, double right, double value) {
        assertThat(Symmetry.index(left, right).orElseThrow()).isCloseTo(value, within(1e-9));
    }

    /** check-values/gait/curvature.json: R = abc/(4K). */
    @ParameterizedTest
    @CsvSource({
        "0, 0, 0.5, 0.1, 1, 0, 0.769230769231", "0, 1.4, 0.62, 1.47, 1.31, 1.38, 0.366019502919",
        "0, 1, 0.5, 1, 1, 1, 0", "0, 1.4, 0.6, 1.33, 1.2, 1.4, -0.383666758016",
        "3.1, 1.38, 2.4, 1.47, 1.8, 1.41, 0.346954127582"
    })
    void theCircleThroughThreeMarksIsTheFormulas(
            double x1, double y1, double x2, double y2, double x3, double y3, double value) {
        assertThat(BackArch.circle(mark(x1, y1), mark(x2, y2), mark(x3, y3)).orElseThrow())
                .isCloseTo(value, within(1e-9));
    }

    /**
     * check-values/gait/plausible-ranges.json (Flower and others 2005, 2006): the published speed is met within the 3 %
     * allowed there for means of ratios, and no published walk is warned of.
     */
    @ParameterizedTest
    @CsvSource({"1.11, 1.395, 1.26", "0.9, 1.3, 1.48", "0.85, 1.233, 1.49", "0.97, 1.335, 1.41"})
    void publishedWalksKeepTheirSpeedAndAreNotWarnedOf(double speed, double lengthM, double timeS) {
        List<Footfall> falls = walk(0.7, 0.7, lengthM).stream()
                .map(f -> moved(f, f.leg(), timeS * f.timeS(), f.xM().orElseThrow()))
                .toList();
        GaitResult got = Gait.of(falls, List.of(), GaitQuestion.plain());
        assertThat(value(got.all().speedMPerS()) / speed).isCloseTo(1, within(0.03));
        assertThat(got.warnings()).isEmpty();
    }

    @Property(tries = 50)
    void whenAndWhereSheStartedDoesNotMatter(
            @ForAll @DoubleRange(min = 0, max = 900) double later, @ForAll @DoubleRange(min = -9, max = 9) double on) {
        same(walk(0.7, 0.6, 1.4), f -> moved(f, f.leg(), f.timeS() + later, f.xM().orElseThrow() + on), 1);
    }

    @Property(tries = 50)
    void theUnitOfLengthScalesTheLengthsAndLeavesTheTimes(@ForAll @DoubleRange(min = 0.1, max = 9) double by) {
        same(walk(0.7, 0.6, 1.4), f -> moved(f, f.leg(), f.timeS(), by * f.xM().orElseThrow()), by);
    }

    @Property(tries = 50)
    void walkingTheOtherWayGivesTheSameFigures(@ForAll @DoubleRange(min = 0.55, max = 0.7) double duty) {
        same(walk(0.7, duty, 1.4), f -> moved(f, f.leg(), f.timeS(), -f.xM().orElseThrow()), 1);
    }

    @Property(tries = 50)
    void swappingLeftAndRightMirrorsTheSides(@ForAll @DoubleRange(min = 0.55, max = 0.74) double duty) {
        List<Footfall> falls = walk(0.7, duty, 1.4);
        GaitResult as = Gait.of(falls, List.of(), GaitQuestion.plain());
        GaitResult mirrored = Gait.of(
                falls.stream()
                        .map(f -> moved(f, f.leg().partner(), f.timeS(), f.xM().orElseThrow()))
                        .toList(),
                List.of(),
                GaitQuestion.plain());
        Symmetry one = as.stanceTimeSymmetry().hind();
        Symmetry other = mirrored.stanceTimeSymmetry().hind();
        near(one.left().orElseThrow(), other.right().orElseThrow());
        near(one.right().orElseThrow(), other.left().orElseThrow());
        near(one.index().orElseThrow(), other.index().orElseThrow());
        near(value(as.trackingUpLeftM()), value(mirrored.trackingUpRightM()));
    }

    private static void same(List<Footfall> falls, UnaryOperator<Footfall> change, double lengths) {
        GaitResult as = Gait.of(falls, List.of(), GaitQuestion.plain());
        GaitResult then = Gait.of(falls.stream().map(change).toList(), List.of(), GaitQuestion.plain());
        near(value(as.all().strideTimeS()), value(then.all().strideTimeS()));
        near(value(as.all().stanceTimeS()), value(then.all().stanceTimeS()));
        near(lengths * value(as.all().strideLengthM()), value(then.all().strideLengthM()));
        near(lengths * value(as.all().speedMPerS()), value(then.all().speedMPerS()));
        near(lengths * value(as.trackingUpLeftM()), value(then.trackingUpLeftM()));
        near(
                as.stanceTimeSymmetry().hind().index().orElseThrow(),
                then.stanceTimeSymmetry().hind().index().orElseThrow());
        for (int feet = 0; feet <= 4; feet++) {
            near(as.support().fractions().get(feet), then.support().fractions().get(feet));
        }
    }

    private static void near(double one, double other) {
        assertThat(other).isCloseTo(one, within(1e-7));
    }

    private static double value(GaitFigure figure) {
        return figure.estimate().value().orElseThrow();
    }

    private static Footfall moved(Footfall f, Leg leg, double timeS, double xM) {
        return new Footfall(timeS, leg, f.event(), OptionalDouble.of(xM), f.yM());
    }

    private static BodyMark mark(double x, double y) {
        return new BodyMark(0, "back", x, y);
    }

    /** Six strides of 1 s, evenly phased LH LF RH RF; the LH stance may differ. */
    private static List<Footfall> walk(double duty, double dutyOfLh, double strideM) {
        List<Footfall> falls = new ArrayList<>();
        Leg[] order = {Leg.LH, Leg.LF, Leg.RH, Leg.RF};
        for (int stride = 0; stride < 6; stride++) {
            for (int i = 0; i < 4; i++) {
                double at = stride + 0.25 * i;
                boolean fore = order[i] == Leg.LF || order[i] == Leg.RF;
                OptionalDouble x = OptionalDouble.of(strideM * at + (fore ? 1 : 0));
                falls.add(Footfall.of(at, order[i], Footfall.Event.DOWN, x));
                falls.add(Footfall.of(at + (order[i] == Leg.LH ? dutyOfLh : duty), order[i], Footfall.Event.UP, x));
            }
        }
        return List.copyOf(falls);
    }
}
