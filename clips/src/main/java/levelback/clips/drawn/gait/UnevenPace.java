package levelback.clips.drawn.gait;

import java.util.Random;

/**
 * A quantity that grows by an uneven amount each stride: {@code ∫ mean·(1 + c·n) dp}, n smooth noise of unit variance
 * with one knot a stride. Grows always; known everywhere on the range it was made for.
 */
final class UnevenPace {
    private static final int PER_STRIDE = 64;

    private final int firstStride;
    private final double mean;
    private final double[] knots;
    private final double c;
    private final double[] sum;

    UnevenPace(int firstStride, int strides, double mean, double c, Random draws) {
        this.firstStride = firstStride;
        this.mean = mean;
        this.c = c;
        knots = new double[strides + 4];
        for (int i = 0; i < knots.length; i++) {
            knots[i] = Math.max(-3, Math.min(3, draws.nextGaussian()));
        }
        sum = new double[strides * PER_STRIDE + 1];
        double h = 1.0 / PER_STRIDE;
        for (int i = 1; i < sum.length; i++) {
            double p = firstStride + (i - 1) * h;
            sum[i] = sum[i - 1] + h / 6 * (rate(p) + 4 * rate(p + h / 2) + rate(p + h));
        }
    }

    /** Growth per stride at a phase. */
    double rate(double p) {
        double u = p - firstStride;
        int i = (int) Math.floor(u);
        i = Math.max(0, Math.min(knots.length - 4, i));
        double f = Math.max(0, Math.min(1, u - i));
        // Cubic through four knots (Catmull-Rom).
        double a = knots[i];
        double b = knots[i + 1];
        double d = knots[i + 2];
        double e = knots[i + 3];
        double n = b + .5 * f * (d - a + f * (2 * a - 5 * b + 4 * d - e + f * (3 * (b - d) + e - a)));
        return mean * (1 + c * n);
    }

    /** The quantity at a phase, 0 at the first stride of the range; beyond the range at the mean pace. */
    double at(double p) {
        double u = (p - firstStride) * PER_STRIDE;
        if (u <= 0) {
            return u / PER_STRIDE * mean;
        }
        int i = (int) u;
        if (i >= sum.length - 1) {
            return sum[sum.length - 1] + (u - sum.length + 1) / PER_STRIDE * mean;
        }
        double f = u - i;
        double p0 = firstStride + (double) i / PER_STRIDE;
        double m0 = rate(p0) / PER_STRIDE;
        double m1 = rate(p0 + 1.0 / PER_STRIDE) / PER_STRIDE;
        double f2 = f * f;
        double f3 = f2 * f;
        return sum[i] * (2 * f3 - 3 * f2 + 1)
                + m0 * (f3 - 2 * f2 + f)
                + sum[i + 1] * (3 * f2 - 2 * f3)
                + m1 * (f3 - f2);
    }

    /** The phase at which the quantity has a value. */
    double phaseAt(double value) {
        double low = firstStride - 1000;
        double high = firstStride + 1000 + (double) sum.length / PER_STRIDE;
        for (int i = 0; i < 80 && high - low > 1e-12; i++) {
            double middle = (low + high) / 2;
            if (at(middle) < value) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + high) / 2;
    }
}
