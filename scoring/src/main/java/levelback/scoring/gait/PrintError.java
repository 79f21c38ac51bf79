package levelback.scoring.gait;

/**
 * An error that all prints of a pass share, such as that of the calibration: it does not average out over strides.
 */
@FunctionalInterface
public interface PrintError {

    /**
     * Standard uncertainty of a figure through the shared error, by the law of propagation (GUM 5.2, correlated
     * inputs): {@code sqrt(g' V g)} with g the figure's derivatives by the prints' x and V their covariance.
     *
     * @param byX derivative of the figure by the x of each footfall, in the order of the footfalls given; 0 for those
     *     that play no part
     * @return in the figure's unit, at least 0
     */
    double standardUncertainty(double[] byX);
}
