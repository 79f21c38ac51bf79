package levelback.scoring.value;

import java.util.List;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.SingularValueDecomposition;

/**
 * From pixels of the upright picture to metres on the floor: a planar homography from four or more floor points, or a
 * similarity from one known length (two points).
 *
 * <p>Homography: X = (h₀x + h₁y + h₂)/(h₆x + h₇y + 1), Y = (h₃x + h₄y + h₅)/(h₆x + h₇y + 1), by linear least squares on
 * pixels shifted to their middle and scaled to unit spread (direct linear transformation; exact for four points).
 * Similarity: X = ax + by + c, Y = bx − ay + d, with y of the picture downwards and Y of the floor away from the camera.
 *
 * <p>Its uncertainty: a point's error is carried through by refitting with each calibration point moved a little in each
 * of its two directions (numerical derivatives, GUM 5.1.3 note 2); two mapped points share the calibration, so their
 * covariance is kept.
 */
public final class FloorCalibration {

    /** A point of the picture, in pixels; origin top left, y down. */
    public record PicturePoint(double xPx, double yPx) {
        /** @throws IllegalArgumentException if a number is not finite */
        public PicturePoint {
            if (!Double.isFinite(xPx) || !Double.isFinite(yPx)) {
                throw new IllegalArgumentException("a picture point has finite numbers");
            }
        }
    }

    /** A point of the floor, in metres. */
    public record FloorPoint(double xM, double yM) {
        /** @throws IllegalArgumentException if a number is not finite */
        public FloorPoint {
            if (!Double.isFinite(xM) || !Double.isFinite(yM)) {
                throw new IllegalArgumentException("a floor point has finite numbers");
            }
        }
    }

    /** A point known in both. */
    public record Known(PicturePoint picture, FloorPoint floor) {}

    private static final double STEP_PX = 1e-4;

    private final List<Known> points;
    private final double middleX;
    private final double middleY;
    private final double spread;
    private final double[] h;

    private FloorCalibration(List<Known> points) {
        this.points = points;
        middleX = points.stream().mapToDouble(p -> p.picture().xPx()).sum() / points.size();
        middleY = points.stream().mapToDouble(p -> p.picture().yPx()).sum() / points.size();
        double squares = points.stream()
                .mapToDouble(p -> Math.pow(p.picture().xPx() - middleX, 2)
                        + Math.pow(p.picture().yPx() - middleY, 2))
                .sum();
        spread = Math.sqrt(squares / points.size());
        if (!(spread > 0)) {
            throw new IllegalArgumentException("all points fall together in the picture; mark points apart");
        }
        h = points.size() == 2 ? similarity() : homography();
    }

    /**
     * Fits a calibration.
     *
     * @param points two for a known length, else four or more, no three of four on a line
     * @throws IllegalArgumentException in words, where the points allow no calibration
     */
    public static FloorCalibration of(List<Known> points) {
        if (points.size() < 2 || points.size() == 3) {
            throw new IllegalArgumentException(
                    "a calibration takes two points of a known length or at least four floor points, not "
                            + points.size());
        }
        return new FloorCalibration(List.copyOf(points));
    }

    /**
     * Where a point of the picture lies on the floor.
     *
     * @throws IllegalArgumentException on the floor's horizon, where no floor is
     */
    public FloorPoint onFloor(PicturePoint point) {
        double x = (point.xPx() - middleX) / spread;
        double y = (point.yPx() - middleY) / spread;
        double w = h[6] * x + h[7] * y + 1;
        if (Math.abs(w) < 1e-12) {
            throw new IllegalArgumentException("the point lies on the floor's horizon");
        }
        return new FloorPoint((h[0] * x + h[1] * y + h[2]) / w, (h[3] * x + h[4] * y + h[5]) / w);
    }

    /**
     * Standard uncertainty of a weighted sum Σ gᵢXᵢ of floor x, through the clicks on the calibration points and the
     * clicks on the points themselves, all independent.
     *
     * @param mapped the points, in pixels
     * @param weights gᵢ
     * @param clickPx standard uncertainty of each click, in pixels, in each direction
     * @return metres times the unit of the weights
     */
    public double standardUncertainty(List<PicturePoint> mapped, double[] weights, double clickPx) {
        double squares = 0;
        for (int i = 0; i < points.size(); i++) {
            for (int axis = 0; axis < 2; axis++) {
                double d =
                        sum(moved(i, axis, STEP_PX), mapped, weights) - sum(moved(i, axis, -STEP_PX), mapped, weights);
                squares += Math.pow(d / (2 * STEP_PX), 2);
            }
        }
        for (int i = 0; i < mapped.size(); i++) {
            PicturePoint p = mapped.get(i);
            for (int axis = 0; axis < 2; axis++) {
                double d = onFloor(shifted(p, axis, STEP_PX)).xM()
                        - onFloor(shifted(p, axis, -STEP_PX)).xM();
                squares += Math.pow(weights[i] * d / (2 * STEP_PX), 2);
            }
        }
        return clickPx * Math.sqrt(squares);
    }

    private FloorCalibration moved(int index, int axis, double by) {
        List<Known> other = new java.util.ArrayList<>(points);
        Known known = points.get(index);
        other.set(index, new Known(shifted(known.picture(), axis, by), known.floor()));
        return new FloorCalibration(List.copyOf(other));
    }

    private static PicturePoint shifted(PicturePoint p, int axis, double by) {
        return axis == 0 ? new PicturePoint(p.xPx() + by, p.yPx()) : new PicturePoint(p.xPx(), p.yPx() + by);
    }

    private static double sum(FloorCalibration by, List<PicturePoint> mapped, double[] weights) {
        double sum = 0;
        for (int i = 0; i < mapped.size(); i++) {
            sum += weights[i] * by.onFloor(mapped.get(i)).xM();
        }
        return sum;
    }

    private double[] similarity() {
        Known first = points.get(0);
        Known second = points.get(1);
        double dx = (second.picture().xPx() - first.picture().xPx()) / spread;
        double dy = (second.picture().yPx() - first.picture().yPx()) / spread;
        double dX = second.floor().xM() - first.floor().xM();
        double dY = second.floor().yM() - first.floor().yM();
        if (dX == 0 && dY == 0) {
            throw new IllegalArgumentException("the two points have the same place on the floor; give their distance");
        }
        double square = dx * dx + dy * dy;
        double a = (dX * dx - dY * dy) / square;
        double b = (dX * dy + dY * dx) / square;
        double x = (first.picture().xPx() - middleX) / spread;
        double y = (first.picture().yPx() - middleY) / spread;
        double c = first.floor().xM() - a * x - b * y;
        double d = first.floor().yM() - b * x + a * y;
        return new double[] {a, b, c, b, -a, d, 0, 0};
    }

    private double[] homography() {
        double[][] rows = new double[2 * points.size()][];
        double[] right = new double[2 * points.size()];
        for (int i = 0; i < points.size(); i++) {
            Known p = points.get(i);
            double x = (p.picture().xPx() - middleX) / spread;
            double y = (p.picture().yPx() - middleY) / spread;
            double mx = p.floor().xM();
            double my = p.floor().yM();
            rows[2 * i] = new double[] {x, y, 1, 0, 0, 0, -mx * x, -mx * y};
            rows[2 * i + 1] = new double[] {0, 0, 0, x, y, 1, -my * x, -my * y};
            right[2 * i] = mx;
            right[2 * i + 1] = my;
        }
        RealMatrix design = new Array2DRowRealMatrix(rows, false);
        SingularValueDecomposition svd = new SingularValueDecomposition(design);
        if (svd.getRank() < 8 || svd.getConditionNumber() > 1e8) {
            throw new IllegalArgumentException(
                    "the floor points lie on one line or fall together; mark four corners of a rectangle");
        }
        return svd.getSolver().solve(new ArrayRealVector(right, false)).toArray();
    }
}
