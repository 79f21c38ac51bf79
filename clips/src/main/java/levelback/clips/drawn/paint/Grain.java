package levelback.clips.drawn.paint;

import static org.bytedeco.opencv.global.opencv_imgproc.GaussianBlur;

import java.util.Random;
import org.bytedeco.javacpp.FloatPointer;
import org.bytedeco.opencv.global.opencv_core;
import org.bytedeco.opencv.opencv_core.Mat;
import org.bytedeco.opencv.opencv_core.Size;

/** Smooth random fields and soft blurs, by OpenCV in floating point (8-bit ones would give contour rings). */
final class Grain {
    private Grain() {}

    /** Gaussian noise of unit variance, smooth over {@code sigmaPx}. */
    static float[] noise(int width, int height, double sigmaPx, Random draws) {
        // A coarse field blown up costs a fraction of a wide blur over the fine one.
        int coarse = sigmaPx > 8 ? (int) (sigmaPx / 4) : 1;
        int w = width / coarse + 3;
        int h = height / coarse + 3;
        float[] white = new float[w * h];
        for (int i = 0; i < white.length; i++) {
            white[i] = (float) draws.nextGaussian();
        }
        float[] soft = sigmaPx / coarse > .3 ? blurred(white, w, h, sigmaPx / coarse) : white;
        double sum = 0;
        double squares = 0;
        for (float v : soft) {
            sum += v;
            squares += v * v;
        }
        double mean = sum / soft.length;
        double scale = 1 / Math.sqrt(squares / soft.length - mean * mean);
        float[] out = new float[width * height];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                float u = (float) x / coarse;
                float v = (float) y / coarse;
                int i = (int) u;
                int j = (int) v;
                float fx = u - i;
                float fy = v - j;
                int k = j * w + i;
                float a = soft[k] + fx * (soft[k + 1] - soft[k]);
                float b = soft[k + w] + fx * (soft[k + w + 1] - soft[k + w]);
                out[y * width + x] = (float) ((a + fy * (b - a) - mean) * scale);
            }
        }
        return out;
    }

    /** A field blurred. */
    static float[] blurred(float[] field, int width, int height, double sigmaPx) {
        try (Mat in = new Mat(height, width, opencv_core.CV_32F);
                Mat out = new Mat();
                Size size = new Size(0, 0);
                FloatPointer from = new FloatPointer(in.data())) {
            from.put(field, 0, width * height);
            GaussianBlur(in, out, size, sigmaPx, sigmaPx, opencv_core.BORDER_REFLECT, 0);
            float[] result = new float[width * height];
            try (FloatPointer to = new FloatPointer(out.data())) {
                to.get(result);
            }
            return result;
        }
    }

    /** 0 below {@code a}, 1 above {@code b}, eased between; {@code a > b} runs the other way. */
    static double ease(double a, double b, double v) {
        double f = Math.max(0, Math.min(1, (v - a) / (b - a)));
        return f * f * (3 - 2 * f);
    }
}
