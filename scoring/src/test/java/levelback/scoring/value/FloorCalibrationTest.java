package levelback.scoring.value;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import levelback.scoring.value.FloorCalibration.FloorPoint;
import levelback.scoring.value.FloorCalibration.Known;
import levelback.scoring.value.FloorCalibration.PicturePoint;
import org.junit.jupiter.api.Test;

/**
 * Floor and picture of a pinhole camera, whose homography is known in closed form: a camera at height 2 m that looks
 * down by the angle whose tangent is 0.4, focal length 1000 px, middle of the picture at (960, 540).
 */
class FloorCalibrationTest {

    private static final double COS = 1 / Math.sqrt(1.16);
    private static final double SIN = 0.4 * COS;

    @Test
    void fourPointsGiveThePinholeCamerasFloorBack() {
        holds(FloorCalibration.of(seen(new double[][] {{-2, 5}, {2, 5}, {2.5, 9}, {-2.5, 9}})));
    }

    @Test
    void morePointsWithoutErrorGiveTheSameFloor() {
        holds(FloorCalibration.of(seen(new double[][] {{-2, 5}, {2, 5}, {2.5, 9}, {-2.5, 9}, {0, 7}, {1, 6}})));
    }

    @Test
    void morePointsWithClicksOffComeNearerThanFour() {
        Random random = new Random(4);
        double four = 0;
        double twelve = 0;
        for (int run = 0; run < 400; run++) {
            List<Known> clicked = new ArrayList<>();
            for (double[] at : new double[][] {
                {-2, 5}, {2, 5}, {2, 9}, {-2, 9}, {-2, 6}, {2, 6}, {-2, 7}, {2, 7}, {-2, 8}, {2, 8}, {0, 5}, {0, 9}
            }) {
                PicturePoint p = picture(at[0], at[1]);
                clicked.add(new Known(
                        new PicturePoint(p.xPx() + random.nextGaussian(), p.yPx() + random.nextGaussian()),
                        new FloorPoint(at[0], at[1])));
            }
            four += squareOff(FloorCalibration.of(clicked.subList(0, 4)));
            twelve += squareOff(FloorCalibration.of(clicked));
        }
        assertThat(twelve).isLessThan(0.7 * four);
    }

    @Test
    void aKnownLengthGivesScaleAndTurn() {
        FloorCalibration length = FloorCalibration.of(List.of(
                new Known(new PicturePoint(100, 400), new FloorPoint(0, 0)),
                new Known(new PicturePoint(400, 400), new FloorPoint(1.5, 0))));
        FloorPoint at = length.onFloor(new PicturePoint(700, 300));
        assertThat(at.xM()).isCloseTo(3.0, within(1e-12));
        assertThat(at.yM()).isCloseTo(0.5, within(1e-12));
    }

    /** Variance of (x−x₁)·L/(x₂−x₁) in closed form: (L/d)²·((1−t)² + t² + 1)·u² at t of the length, all x clicks. */
    @Test
    void theUncertaintyOfAKnownLengthIsTheClosedForm() {
        FloorCalibration length = FloorCalibration.of(List.of(
                new Known(new PicturePoint(100, 400), new FloorPoint(0, 0)),
                new Known(new PicturePoint(400, 400), new FloorPoint(1.5, 0))));
        double u = length.standardUncertainty(List.of(new PicturePoint(700, 400)), new double[] {1}, 2);
        assertThat(u).isCloseTo(2 * 1.5 / 300 * Math.sqrt(1 + 4 + 1), within(1e-6));
    }

    /** Propagation of distributions (JCGM 101:2008): every click drawn anew, 20,000 times. */
    @Test
    void theUncertaintyIsThatOfDrawnClicks() {
        double[][] floor = {{-2, 5}, {2, 5}, {2.5, 9}, {-2.5, 9}};
        List<Known> exact = seen(floor);
        PicturePoint from = picture(-0.7, 6.5);
        PicturePoint to = picture(0.7, 6.5);
        Random random = new Random(11);
        int runs = 20_000;
        double sum = 0;
        double squares = 0;
        for (int run = 0; run < runs; run++) {
            List<Known> clicked = exact.stream()
                    .map(k -> new Known(off(k.picture(), random), k.floor()))
                    .toList();
            FloorCalibration drawn = FloorCalibration.of(clicked);
            double length = drawn.onFloor(off(to, random)).xM()
                    - drawn.onFloor(off(from, random)).xM();
            sum += length;
            squares += length * length;
        }
        double sd = Math.sqrt(squares / runs - Math.pow(sum / runs, 2));
        double u = FloorCalibration.of(exact).standardUncertainty(List.of(from, to), new double[] {-1, 1}, 1);
        // A standard deviation from 20,000 draws has a standard error of 0.5 %.
        assertThat(u / sd).isCloseTo(1, within(0.02));
    }

    @Test
    void tooFewPointsAndPointsOnALineAreRefusedInASentence() {
        List<Known> three = seen(new double[][] {{0, 5}, {1, 5}, {1, 7}});
        assertThatThrownBy(() -> FloorCalibration.of(three)).hasMessageContaining("at least four");
        List<Known> line = seen(new double[][] {{0, 5}, {1, 6}, {2, 7}, {3, 8}});
        assertThatThrownBy(() -> FloorCalibration.of(line)).hasMessageContaining("on one line");
    }

    private static void holds(FloorCalibration calibration) {
        for (double[] at : new double[][] {{0.3, 6.1}, {-1.7, 8.2}, {2.4, 5.5}}) {
            FloorPoint got = calibration.onFloor(picture(at[0], at[1]));
            assertThat(got.xM()).isCloseTo(at[0], within(1e-9));
            assertThat(got.yM()).isCloseTo(at[1], within(1e-9));
        }
    }

    private static double squareOff(FloorCalibration calibration) {
        FloorPoint got = calibration.onFloor(picture(0.5, 7));
        return Math.pow(got.xM() - 0.5, 2) + Math.pow(got.yM() - 7, 2);
    }

    private static PicturePoint off(PicturePoint p, Random random) {
        return new PicturePoint(p.xPx() + random.nextGaussian(), p.yPx() + random.nextGaussian());
    }

    private static List<Known> seen(double[][] floor) {
        List<Known> known = new ArrayList<>();
        for (double[] at : floor) {
            known.add(new Known(picture(at[0], at[1]), new FloorPoint(at[0], at[1])));
        }
        return known;
    }

    private static PicturePoint picture(double x, double away) {
        double depth = away * COS + 2 * SIN;
        return new PicturePoint(960 + 1000 * x / depth, 540 + 1000 * (2 * COS - away * SIN) / depth);
    }
}
