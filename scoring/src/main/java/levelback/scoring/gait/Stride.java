package levelback.scoring.gait;

import java.util.OptionalDouble;
import levelback.scoring.value.Leg;

/**
 * One stride: a hoof down until it is down again.
 *
 * @param leg whose
 * @param downS its first down, in seconds
 * @param strideTimeS down to down
 * @param stanceTimeS down to its up; empty without the up
 * @param swingTimeS that up to the next down; empty without the up
 * @param dutyFactor stance / stride
 * @param strideLengthM print to print along her way; empty where a print was not measured
 * @param speedMPerS stride length / stride time
 * @param uncertainty standard uncertainties by the measurement
 */
public record Stride(
        Leg leg,
        double downS,
        double strideTimeS,
        OptionalDouble stanceTimeS,
        OptionalDouble swingTimeS,
        OptionalDouble dutyFactor,
        OptionalDouble strideLengthM,
        OptionalDouble speedMPerS,
        Uncertainty uncertainty) {

    /**
     * Standard uncertainties of one stride's figures, from frame period, digitising and calibration; 0 where none of
     * them was given.
     */
    public record Uncertainty(
            double strideTimeS, double stanceTimeS, double dutyFactor, double strideLengthM, double speedMPerS) {}
}
