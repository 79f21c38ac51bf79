package levelback.clips.drawn.paint;

import java.util.Arrays;

/**
 * How much of each pixel of a box a polygon covers, by exact areas: edges are never on whole pixels. Used again and again
 * by one thread.
 */
final class Coverage {
    int left;
    int top;
    int width;
    int height;
    /** Row by row; 0 to 1 after {@link #finish()}. */
    float[] share = new float[0];

    private int stride;

    /** Begins with an empty box, cut to the picture; false if nothing is left of it. */
    boolean begin(double x0, double y0, double x1, double y1, int pictureWidth, int pictureHeight) {
        left = (int) Math.max(0, Math.floor(x0) - 1);
        top = (int) Math.max(0, Math.floor(y0) - 1);
        int right = (int) Math.min(pictureWidth, Math.ceil(x1) + 2);
        int bottom = (int) Math.min(pictureHeight, Math.ceil(y1) + 2);
        width = right - left;
        height = bottom - top;
        if (width <= 0 || height <= 0) {
            return false;
        }
        stride = width + 2;
        int needed = stride * height;
        if (share.length < needed) {
            share = new float[needed + needed / 4];
        } else {
            Arrays.fill(share, 0, needed, 0);
        }
        return true;
    }

    /** Begins with the box of polygons. */
    boolean beginAround(Spline.Path[] paths, int pictureWidth, int pictureHeight) {
        double x0 = 1e9;
        double y0 = 1e9;
        double x1 = -1e9;
        double y1 = -1e9;
        for (Spline.Path path : paths) {
            for (int i = 0; i < path.size; i++) {
                x0 = Math.min(x0, path.x[i]);
                x1 = Math.max(x1, path.x[i]);
                y0 = Math.min(y0, path.y[i]);
                y1 = Math.max(y1, path.y[i]);
            }
        }
        return begin(x0, y0, x1, y1, pictureWidth, pictureHeight);
    }

    /** Adds a closed polygon; pixel centres lie on whole numbers. */
    void add(Spline.Path path, float weight) {
        for (int i = 0; i < path.size; i++) {
            int k = i + 1 == path.size ? 0 : i + 1;
            edge(path.x[i] + .5 - left, path.y[i] + .5 - top, path.x[k] + .5 - left, path.y[k] + .5 - top, weight);
        }
    }

    private void edge(double ax, double ay, double bx, double by, float weight) {
        if (ay == by) {
            return;
        }
        float sign = weight;
        double x0 = ax;
        double y0 = ay;
        double x1 = bx;
        double y1 = by;
        if (y0 > y1) {
            sign = -weight;
            x0 = bx;
            y0 = by;
            x1 = ax;
            y1 = ay;
        }
        if (y1 <= 0 || y0 >= height) {
            return;
        }
        double slope = (x1 - x0) / (y1 - y0);
        double x = x0;
        double y = y0;
        if (y < 0) {
            x -= y * slope;
            y = 0;
        }
        double end = Math.min(y1, height);
        int row = (int) y;
        while (y < end) {
            double next = Math.min(row + 1, end);
            double nextX = x + (next - y) * slope;
            span(row * stride, Math.min(x, nextX), Math.max(x, nextX), (float) (next - y) * sign);
            x = nextX;
            y = next;
            row++;
        }
    }

    private void span(int row, double lowX, double highX, float d) {
        double low = Math.max(0, Math.min(width, lowX));
        double high = Math.max(0, Math.min(width, highX));
        int i = (int) low;
        int j = (int) high;
        if (i == j) {
            float mid = (float) ((low + high) / 2 - i);
            share[row + i] += d * (1 - mid);
            share[row + i + 1] += d * mid;
            return;
        }
        float inverse = (float) (1 / (high - low));
        float first = (float) (i + 1 - low);
        float a = .5f * inverse * first * first;
        share[row + i] += d * a;
        float before = a;
        for (int k = i + 1; k < j; k++) {
            float upTo = inverse * (float) (k + .5 - low);
            share[row + k] += d * (upTo - before);
            before = upTo;
        }
        float last = (float) (high - j);
        float upTo = 1 - .5f * inverse * last * last;
        share[row + j] += d * (upTo - before);
        share[row + j + 1] += d * (1 - upTo);
    }

    /** Sums up; after it {@link #at} holds. */
    void finish() {
        for (int y = 0; y < height; y++) {
            int row = y * stride;
            float sum = 0;
            for (int x = 0; x < width; x++) {
                sum += share[row + x];
                float covered = Math.abs(sum);
                share[row + x] = covered > 1 ? 1 : covered;
            }
        }
    }

    /** Covered share of a pixel of the box. */
    float at(int x, int y) {
        return share[y * stride + x];
    }

    int rowStart(int y) {
        return y * stride;
    }
}
