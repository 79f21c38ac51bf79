package levelback.clips.drawn.paint;

import static org.bytedeco.opencv.global.opencv_core.add;
import static org.bytedeco.opencv.global.opencv_core.subtract;
import static org.bytedeco.opencv.global.opencv_imgproc.GaussianBlur;

import java.util.Random;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.opencv.global.opencv_core;
import org.bytedeco.opencv.opencv_core.Mat;
import org.bytedeco.opencv.opencv_core.Rect;
import org.bytedeco.opencv.opencv_core.Size;

/**
 * What the camera adds: a slight blur, the lamps' flicker, noise that is another in every frame. Safe to use by several
 * threads, each with its own frame.
 */
final class Film implements AutoCloseable {
    private static final int SHEETS = 4;
    private static final int SPARE_PX = 96;
    private static final double LUMINANCE_SIGMA = 2.0;
    private static final double CHROMA_SIGMA = 1.0;
    private static final double BLUR_SIGMA_PX = .55;
    private static final double FLICKER = .012;

    private final int width;
    private final int height;
    private final long seed;
    private final Mat[] brighter = new Mat[SHEETS];
    private final Mat[] darker = new Mat[SHEETS];

    Film(int width, int height, long seed) {
        this.width = width;
        this.height = height;
        this.seed = seed;
        int w = width + SPARE_PX;
        int h = height + SPARE_PX;
        Random draws = new Random(seed * 13 + 1);
        byte[] up = new byte[w * h * 3];
        byte[] down = new byte[w * h * 3];
        for (int sheet = 0; sheet < SHEETS; sheet++) {
            for (int i = 0; i < w * h; i++) {
                double luminance = LUMINANCE_SIGMA * gaussian(draws);
                for (int k = 0; k < 3; k++) {
                    int v = (int) Math.round(luminance + CHROMA_SIGMA * gaussian(draws));
                    up[3 * i + k] = (byte) Math.max(0, v);
                    down[3 * i + k] = (byte) Math.max(0, -v);
                }
            }
            brighter[sheet] = mat(w, h, up);
            darker[sheet] = mat(w, h, down);
        }
    }

    /** Near enough to a Gaussian, and quick: the sum of four even draws has variance 1/3. */
    private static double gaussian(Random draws) {
        long bits = draws.nextLong();
        double sum = (bits & 0xffff) + (bits >>> 16 & 0xffff) + (bits >>> 32 & 0xffff) + (bits >>> 48 & 0xffff);
        return (sum / 65_536 - 2) * Math.sqrt(3);
    }

    private static Mat mat(int width, int height, byte[] bytes) {
        Mat mat = new Mat(height, width, opencv_core.CV_8UC3);
        try (BytePointer data = new BytePointer(mat.data())) {
            data.put(bytes, 0, bytes.length);
        }
        return mat;
    }

    /** A frame to expose into. */
    Mat blank() {
        return new Mat(height, width, opencv_core.CV_8UC3);
    }

    /** The lane through the lens, once: its blur does not change. */
    byte[] softened(byte[] bgr) {
        byte[] soft = new byte[bgr.length];
        try (Mat sharp = mat(width, height, bgr);
                Size size = new Size(3, 3)) {
            GaussianBlur(sharp, sharp, size, BLUR_SIGMA_PX, BLUR_SIGMA_PX, opencv_core.BORDER_REPLICATE, 0);
            try (BytePointer data = new BytePointer(sharp.data())) {
                data.get(soft, 0, soft.length);
            }
        }
        return soft;
    }

    /** Exposes a painted canvas as frame number {@code frame}, taken at a time. */
    void expose(Canvas canvas, int frame, double timeS, Mat into) {
        try (BytePointer data = new BytePointer(into.data())) {
            data.put(canvas.bgr, 0, canvas.bgr.length);
        }
        if (canvas.dirtyRight > canvas.dirtyLeft && canvas.dirtyBottom > canvas.dirtyTop) {
            try (Rect box = new Rect(
                            canvas.dirtyLeft,
                            canvas.dirtyTop,
                            canvas.dirtyRight - canvas.dirtyLeft,
                            canvas.dirtyBottom - canvas.dirtyTop);
                    Mat part = new Mat(into, box);
                    Size size = new Size(3, 3)) {
                GaussianBlur(part, part, size, BLUR_SIGMA_PX, BLUR_SIGMA_PX, opencv_core.BORDER_REPLICATE, 0);
            }
        }
        Random draws = new Random(seed ^ (frame + 1) * 0x9E3779B97F4A7C15L);
        double lamps = .7 * Math.sin(2 * Math.PI * 100.3 * timeS) + .5 * draws.nextGaussian();
        into.convertTo(into, -1, 1 + FLICKER * Math.max(-1, Math.min(1, lamps)), 0);
        int sheet = draws.nextInt(SHEETS);
        try (Rect at = new Rect(draws.nextInt(SPARE_PX), draws.nextInt(SPARE_PX), width, height);
                Mat plus = new Mat(brighter[sheet], at);
                Mat minus = new Mat(darker[sheet], at)) {
            add(into, plus, into);
            subtract(into, minus, into);
        }
    }

    @Override
    public void close() {
        for (int i = 0; i < SHEETS; i++) {
            brighter[i].close();
            darker[i].close();
        }
    }
}
