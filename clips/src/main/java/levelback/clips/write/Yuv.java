package levelback.clips.write;

import java.nio.ByteBuffer;

/**
 * A picture in 8-bit 4:2:0: the rows of Y, then those of U, then those of V, packed; chroma sides rounded up.
 *
 * @param width in pixels
 * @param height in pixels
 * @param planes direct buffer of {@link #bytes} bytes
 */
record Yuv(int width, int height, ByteBuffer planes) {

    static Yuv of(int width, int height) {
        return new Yuv(width, height, ByteBuffer.allocateDirect(bytes(width, height)));
    }

    static int bytes(int width, int height) {
        return width * height + 2 * half(width) * half(height);
    }

    private static int half(int side) {
        return (side + 1) / 2;
    }

    int planeWidth(int plane) {
        return plane == 0 ? width : half(width);
    }

    int planeHeight(int plane) {
        return plane == 0 ? height : half(height);
    }

    int planeAt(int plane) {
        return plane == 0 ? 0 : width * height + (plane - 1) * half(width) * half(height);
    }

    /** The picture turned clockwise by quarters; itself for none. */
    Yuv turned(int clockwiseDegrees) {
        if (clockwiseDegrees == 0) {
            return this;
        }
        boolean upright = clockwiseDegrees % 180 == 0;
        Yuv to = of(upright ? width : height, upright ? height : width);
        for (int plane = 0; plane < 3; plane++) {
            int wide = planeWidth(plane);
            int high = planeHeight(plane);
            int toWide = to.planeWidth(plane);
            for (int y = 0; y < high; y++) {
                for (int x = 0; x < wide; x++) {
                    int toX = clockwiseDegrees == 90 ? high - 1 - y : clockwiseDegrees == 180 ? wide - 1 - x : y;
                    int toY = clockwiseDegrees == 90 ? x : clockwiseDegrees == 180 ? high - 1 - y : wide - 1 - x;
                    to.planes.put(to.planeAt(plane) + toY * toWide + toX, planes.get(planeAt(plane) + y * wide + x));
                }
            }
        }
        return to;
    }

    private byte luma(int x, int y) {
        return planes.get(y * width + x);
    }

    /** Lays a picture of red, green and blue over this one, coded with a matrix of the given shares of red and blue. */
    void lay(Overlay.Layer layer, double redShare, double blueShare) {
        for (int y = Math.max(0, layer.y()); y < Math.min(height, layer.y() + layer.height()); y++) {
            for (int x = Math.max(0, layer.x()); x < Math.min(width, layer.x() + layer.width()); x++) {
                double alpha = layer.alpha(x, y);
                if (alpha > 0) {
                    double bright = 16 + 219 * layer.luma(x, y, redShare, blueShare);
                    planes.put(y * width + x, (byte) Math.round(alpha * bright + (1 - alpha) * (luma(x, y) & 0xFF)));
                }
            }
        }
        int wide = half(width);
        for (int y = Math.max(0, layer.y() / 2);
                y < Math.min(half(height), (layer.y() + layer.height() + 1) / 2);
                y++) {
            for (int x = Math.max(0, layer.x() / 2); x < Math.min(wide, (layer.x() + layer.width() + 1) / 2); x++) {
                chroma(layer, x, y, redShare, blueShare);
            }
        }
    }

    private void chroma(Overlay.Layer layer, int x, int y, double redShare, double blueShare) {
        double weight = 0;
        double blueness = 0;
        double redness = 0;
        for (int i = 0; i < 4; i++) {
            int px = 2 * x + i % 2;
            int py = 2 * y + i / 2;
            double alpha = layer.alpha(px, py) / 4;
            double bright = layer.luma(px, py, redShare, blueShare);
            weight += alpha;
            blueness += alpha * (layer.channel(px, py, 0) - bright) / (2 * (1 - blueShare));
            redness += alpha * (layer.channel(px, py, 2) - bright) / (2 * (1 - redShare));
        }
        if (weight > 0) {
            mix(planeAt(1) + y * half(width) + x, blueness, weight);
            mix(planeAt(2) + y * half(width) + x, redness, weight);
        }
    }

    private void mix(int at, double laid, double weight) {
        double under = (planes.get(at) & 0xFF) - 128.0;
        planes.put(at, (byte) Math.round(128 + 224 * laid + (1 - weight) * under));
    }
}
