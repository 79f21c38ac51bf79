package levelback.player.trim;

/** A smooth line through given points, x as a function of y. */
final class Curve {

    private Curve() {}

    /**
     * The value at {@code y} of the monotone cubic through the points; outside them the end value.
     *
     * <p>Slopes after Fritsch and Butland (1984): the harmonic mean of the neighbouring differences, 0 where they change
     * sign, so that an outline never bulges past its points.
     *
     * @param points y0, x0, y1, x1, … with rising y
     */
    static double at(double y, double... points) {
        int n = points.length / 2;
        if (y <= points[0]) {
            return points[1];
        }
        if (y >= points[2 * n - 2]) {
            return points[2 * n - 1];
        }
        int i = 0;
        while (y > points[2 * i + 2]) {
            i++;
        }
        double h = points[2 * i + 2] - points[2 * i];
        double t = (y - points[2 * i]) / h;
        double m0 = slope(points, n, i);
        double m1 = slope(points, n, i + 1);
        double t2 = t * t;
        double t3 = t2 * t;
        return (2 * t3 - 3 * t2 + 1) * points[2 * i + 1]
                + (t3 - 2 * t2 + t) * h * m0
                + (-2 * t3 + 3 * t2) * points[2 * i + 3]
                + (t3 - t2) * h * m1;
    }

    private static double slope(double[] points, int n, int i) {
        if (i == 0) {
            return secant(points, 0);
        }
        if (i == n - 1) {
            return secant(points, n - 2);
        }
        double before = secant(points, i - 1);
        double after = secant(points, i);
        return before * after <= 0 ? 0 : 2 * before * after / (before + after);
    }

    private static double secant(double[] points, int i) {
        return (points[2 * i + 3] - points[2 * i + 1]) / (points[2 * i + 2] - points[2 * i]);
    }
}
