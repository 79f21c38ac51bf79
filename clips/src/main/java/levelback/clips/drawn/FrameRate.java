package levelback.clips.drawn;

/**
 * Frames per second as a fraction.
 *
 * @param numerator at least 1
 * @param denominator at least 1
 */
public record FrameRate(int numerator, int denominator) {
    /** 25 frames a second. */
    public static final FrameRate PAL = new FrameRate(25, 1);
    /** 50 frames a second. */
    public static final FrameRate FIFTY = new FrameRate(50, 1);
    /** 30000/1001 frames a second. */
    public static final FrameRate NTSC = new FrameRate(30_000, 1001);

    /** @throws IllegalArgumentException if a part is below 1 */
    public FrameRate {
        if (numerator < 1 || denominator < 1) {
            throw new IllegalArgumentException("frame rate must be positive: " + numerator + "/" + denominator);
        }
    }

    /** When a frame is exposed (the middle of the exposure), in seconds from frame 0. */
    public double timeS(int frame) {
        return (double) frame * denominator / numerator;
    }

    /** Frames a second as a floating number. */
    public double perSecond() {
        return (double) numerator / denominator;
    }
}
