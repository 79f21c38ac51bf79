package levelback.clips.drawn.paint;

/** A picture laid over a part of the cow frame: colours, and light upon them. */
final class Texture {
    final double leftM;
    final double topM;
    final double pxPerM;
    final int width;
    final int height;
    /** Blue, green, red in the low 24 bits. */
    final int[] colour;
    /** Light, 1 for plain. */
    final float[] light;

    Texture(double leftM, double topM, double widthM, double heightM, double pxPerM) {
        this.leftM = leftM;
        this.topM = topM;
        this.pxPerM = pxPerM;
        width = (int) Math.ceil(widthM * pxPerM);
        height = (int) Math.ceil(heightM * pxPerM);
        colour = new int[width * height];
        light = new float[width * height];
        java.util.Arrays.fill(light, 1);
    }

    double xM(int column) {
        return leftM + column / pxPerM;
    }

    double yM(int row) {
        return topM - row / pxPerM;
    }

    /** Colour at a place of the texture in its own pixels, from four neighbours. */
    int colourAt(float u, float v) {
        float x = Math.max(0, Math.min(width - 1.001f, u));
        float y = Math.max(0, Math.min(height - 1.001f, v));
        int i = (int) x;
        int j = (int) y;
        int fx = (int) ((x - i) * 256);
        int fy = (int) ((y - j) * 256);
        int k = j * width + i;
        int a = mix(colour[k], colour[k + 1], fx);
        int b = mix(colour[k + width], colour[k + width + 1], fx);
        return mix(a, b, fy);
    }

    float lightAt(float u, float v) {
        int x = (int) Math.max(0, Math.min(width - 1, u + .5f));
        int y = (int) Math.max(0, Math.min(height - 1, v + .5f));
        return light[y * width + x];
    }

    /** Two colours mixed, {@code f} of 256 parts of the second. */
    static int mix(int a, int b, int f) {
        int outer = ((a & 0xff00ff) * (256 - f) + (b & 0xff00ff) * f) >>> 8;
        int inner = ((a & 0x00ff00) * (256 - f) + (b & 0x00ff00) * f) >>> 8;
        return (outer & 0xff00ff) | (inner & 0x00ff00);
    }

    /** A colour under a light. */
    static int lit(int colour, float light) {
        int f = (int) (light * 256);
        int b = Math.min(255, ((colour & 0xff) * f) >> 8);
        int g = Math.min(255, (((colour >> 8) & 0xff) * f) >> 8);
        int r = Math.min(255, (((colour >> 16) & 0xff) * f) >> 8);
        return b | g << 8 | r << 16;
    }

    static int bgr(int b, int g, int r) {
        return b | g << 8 | r << 16;
    }
}
