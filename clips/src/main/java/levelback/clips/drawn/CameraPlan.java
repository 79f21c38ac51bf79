package levelback.clips.drawn;

/**
 * The fixed side camera: square to the lane, 1.15 m above the floor. World x = 0 is the middle of the picture.
 *
 * @param widthPx picture width, even
 * @param heightPx picture height, even
 * @param focalPx focal length in pixels
 * @param distanceM from the lens to the middle of the cow
 */
public record CameraPlan(int widthPx, int heightPx, double focalPx, double distanceM) {

    /** The demo's camera: about 5 m of the lane. */
    public static final CameraPlan USUAL = new CameraPlan(960, 540, 1000, 5.2);
    /** A second setting for tests: shorter lens, further off. */
    public static final CameraPlan FURTHER = new CameraPlan(960, 540, 700, 7.1);

    private static final double LENS_HEIGHT_M = 1.15;
    private static final double HORIZON_SHARE = 0.42;

    /** @throws IllegalArgumentException if a size is odd, below 32 or above 4096, or a length not positive */
    public CameraPlan {
        if (widthPx < 32 || heightPx < 32 || widthPx > 4096 || heightPx > 4096 || (widthPx | heightPx) % 2 != 0) {
            throw new IllegalArgumentException("picture size must be even, 32 to 4096: " + widthPx + "x" + heightPx);
        }
        if (!(focalPx > 0) || !(distanceM > 1)) {
            throw new IllegalArgumentException("no such camera: f " + focalPx + " px, " + distanceM + " m");
        }
    }

    /** Pixels per metre in the upright plane at depth z (0: middle of the cow, negative: nearer). */
    public double pxPerM(double z) {
        return focalPx / (distanceM + z);
    }

    /** Column of world x in the plane at depth z; the centre of the left-most pixel is 0. */
    public double columnPx(double xM, double z) {
        return widthPx / 2.0 - 0.5 + pxPerM(z) * xM;
    }

    /** Row of height y in the plane at depth z; the centre of the topmost pixel is 0. */
    public double rowPx(double yM, double z) {
        return HORIZON_SHARE * heightPx - 0.5 - pxPerM(z) * (yM - LENS_HEIGHT_M);
    }

    /** World x on show at a column, in the plane at depth z. */
    public double xM(double columnPx, double z) {
        return (columnPx - widthPx / 2.0 + 0.5) / pxPerM(z);
    }

    /** Height on show at a row, in the plane at depth z. */
    public double yM(double rowPx, double z) {
        return LENS_HEIGHT_M + (HORIZON_SHARE * heightPx - 0.5 - rowPx) / pxPerM(z);
    }

    /** Half of the lane on show, in metres, in the plane at depth z. */
    public double halfWidthM(double z) {
        return widthPx / 2.0 / pxPerM(z);
    }
}
