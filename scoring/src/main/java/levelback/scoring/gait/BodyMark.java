package levelback.scoring.gait;

/**
 * A digitised point of her body.
 *
 * @param timeS seconds on the recording's clock
 * @param point name of the point in lower case, such as {@code poll}, {@code withers}, {@code tailhead}
 * @param xM metres along the lane
 * @param yM metres up
 */
public record BodyMark(double timeS, String point, double xM, double yM) {

    /** @throws IllegalArgumentException if a number is not finite */
    public BodyMark {
        if (!Double.isFinite(timeS) || !Double.isFinite(xM) || !Double.isFinite(yM)) {
            throw new IllegalArgumentException("a mark has finite numbers");
        }
    }
}
