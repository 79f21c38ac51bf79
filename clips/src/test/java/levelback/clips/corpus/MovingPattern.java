package levelback.clips.corpus;

/** Pictures that all differ and move, as packed {@code yuv420p}: ramps, a square that wanders, a bar code of the number. */
public final class MovingPattern {

    private MovingPattern() {}

    /** All pictures one after the other. */
    public static byte[] yuv420p(int width, int height, int frames) {
        int luma = width * height;
        int half = (width + 1) / 2 * ((height + 1) / 2);
        byte[] all = new byte[(luma + 2 * half) * frames];
        int at = 0;
        for (int n = 0; n < frames; n++) {
            int squareX = (n * 5) % Math.max(1, width - 12);
            int squareY = (n * 3) % Math.max(1, height - 12);
            for (int y = 0; y < height; y++) {
                for (int x = 0; x < width; x++) {
                    int value = 40 + (x * 2 + y + n * 3) % 160;
                    if (x >= squareX && x < squareX + 12 && y >= squareY && y < squareY + 12) {
                        value = 225;
                    }
                    if (y < 8 && x < 64) {
                        value = (n >> (x / 8) & 1) == 1 ? 235 : 16;
                    }
                    all[at++] = (byte) value;
                }
            }
            for (int plane = 0; plane < 2; plane++) {
                for (int i = 0; i < half; i++) {
                    all[at++] = (byte) (100 + (i / 7 + n * (plane + 1)) % 56);
                }
            }
        }
        return all;
    }
}
