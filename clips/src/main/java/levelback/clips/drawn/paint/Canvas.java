package levelback.clips.drawn.paint;

import java.util.Arrays;

/** A frame being painted, and for each pixel the layer that lies on top. Used by one thread. */
final class Canvas {
    /** Coverage from which a layer owns a pixel. */
    private static final float OWNS = .5f;

    final int width;
    final int height;
    /** Blue, green, red, row by row. */
    final byte[] bgr;
    /** Layer on top: 0 for the lane, else 16 × (number of the cow in this frame, from 1) + her layer. */
    final byte[] owner;

    final Coverage coverage = new Coverage();
    int[] ink = new int[0];
    /** Box of everything painted since the lane. */
    int dirtyLeft;

    int dirtyTop;
    int dirtyRight;
    int dirtyBottom;

    Canvas(int width, int height) {
        this.width = width;
        this.height = height;
        bgr = new byte[width * height * 3];
        owner = new byte[width * height];
    }

    void beginWith(byte[] lane) {
        System.arraycopy(lane, 0, bgr, 0, bgr.length);
        Arrays.fill(owner, (byte) 0);
        dirtyLeft = width;
        dirtyTop = height;
        dirtyRight = 0;
        dirtyBottom = 0;
    }

    void touched(int left, int top, int right, int bottom) {
        dirtyLeft = Math.max(0, Math.min(dirtyLeft, left));
        dirtyTop = Math.max(0, Math.min(dirtyTop, top));
        dirtyRight = Math.min(width, Math.max(dirtyRight, right));
        dirtyBottom = Math.min(height, Math.max(dirtyBottom, bottom));
    }

    /** Starts an ink plate of the size of the coverage's box; -1 where no ink is. */
    int[] plate() {
        int n = coverage.width * coverage.height;
        if (ink.length < n) {
            ink = new int[n + n / 4];
        }
        Arrays.fill(ink, 0, n, -1);
        return ink;
    }

    void blend(int pixel, int colour, int f) {
        int k = 3 * pixel;
        int b = bgr[k] & 0xff;
        int g = bgr[k + 1] & 0xff;
        int r = bgr[k + 2] & 0xff;
        bgr[k] = (byte) (b + ((((colour & 0xff) - b) * f + 128) >> 8));
        bgr[k + 1] = (byte) (g + (((((colour >> 8) & 0xff) - g) * f + 128) >> 8));
        bgr[k + 2] = (byte) (r + (((((colour >> 16) & 0xff) - r) * f + 128) >> 8));
    }

    /** Lays the ink plate on through the coverage. */
    void print(int layer) {
        Coverage c = coverage;
        int lastInk = 0;
        for (int y = 0; y < c.height; y++) {
            int row = c.rowStart(y);
            int pixel = (y + c.top) * width + c.left;
            int plate = y * c.width;
            for (int x = 0; x < c.width; x++) {
                float share = c.share[row + x];
                int colour = ink[plate + x];
                if (colour >= 0) {
                    lastInk = colour;
                }
                if (share > .004f) {
                    blend(pixel + x, colour >= 0 ? colour : lastInk, (int) (share * 256));
                    if (share >= OWNS) {
                        owner[pixel + x] = (byte) layer;
                    }
                }
            }
        }
        touched(c.left, c.top, c.left + c.width, c.top + c.height);
    }

    /** Lays one colour on through the coverage. */
    void print(int layer, int colour) {
        Arrays.fill(plate(), 0, coverage.width * coverage.height, colour);
        print(layer);
    }

    /** Darkens a soft ellipse. */
    void shade(double cx, double cy, double rx, double ry, double depth, double core) {
        int top = (int) Math.max(0, cy - ry);
        int bottom = (int) Math.min(height - 1, cy + ry);
        int left = (int) Math.max(0, cx - rx);
        int right = (int) Math.min(width - 1, cx + rx);
        for (int y = top; y <= bottom; y++) {
            double dy = (y - cy) / ry;
            for (int x = left; x <= right; x++) {
                double dx = (x - cx) / rx;
                double d = dx * dx + dy * dy;
                if (d < 1) {
                    double soft = Math.min(1, (1 - d) / (1 - core));
                    int f = (int) (256 * (1 - depth * soft * soft * (3 - 2 * soft)));
                    int k = 3 * (y * width + x);
                    bgr[k] = (byte) (((bgr[k] & 0xff) * f) >> 8);
                    bgr[k + 1] = (byte) (((bgr[k + 1] & 0xff) * f) >> 8);
                    bgr[k + 2] = (byte) (((bgr[k + 2] & 0xff) * f) >> 8);
                }
            }
        }
        touched(left, top, right + 1, bottom + 1);
    }
}
