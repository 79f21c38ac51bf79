package levelback.clips.drawn.paint;

import java.util.List;
import levelback.clips.drawn.gait.Spot;

/** Catmull-Rom curves through given points. */
final class Spline {
    private Spline() {}

    /** Samples a curve: {@code perSpan} points from each given point to the next. */
    static Path through(List<Spot> points, boolean closed, int perSpan) {
        int n = points.size();
        int spans = closed ? n : n - 1;
        Path path = new Path(spans * perSpan + 1);
        for (int i = 0; i < spans; i++) {
            Spot a = points.get(closed ? (i + n - 1) % n : Math.max(0, i - 1));
            Spot b = points.get(i);
            Spot c = points.get((i + 1) % n);
            Spot d = points.get(closed ? (i + 2) % n : Math.min(n - 1, i + 2));
            for (int k = 0; k < perSpan; k++) {
                double f = (double) k / perSpan;
                path.add(at(a.x(), b.x(), c.x(), d.x(), f), at(a.y(), b.y(), c.y(), d.y(), f));
            }
        }
        if (!closed) {
            path.add(points.get(n - 1).x(), points.get(n - 1).y());
        }
        return path;
    }

    private static double at(double a, double b, double c, double d, double f) {
        return b + .5 * f * (c - a + f * (2 * a - 5 * b + 4 * c - d + f * (3 * (b - c) + d - a)));
    }

    /** A polygon that grows. */
    static final class Path {
        double[] x;
        double[] y;
        int size;

        Path(int capacity) {
            x = new double[Math.max(4, capacity)];
            y = new double[x.length];
        }

        void add(double px, double py) {
            if (size == x.length) {
                x = java.util.Arrays.copyOf(x, 2 * size);
                y = java.util.Arrays.copyOf(y, 2 * size);
            }
            x[size] = px;
            y[size++] = py;
        }

        void add(Spot spot) {
            add(spot.x(), spot.y());
        }

        void addAll(Path other, boolean backwards) {
            for (int i = 0; i < other.size; i++) {
                int k = backwards ? other.size - 1 - i : i;
                add(other.x[k], other.y[k]);
            }
        }
    }
}
