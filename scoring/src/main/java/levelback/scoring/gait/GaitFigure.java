package levelback.scoring.gait;

import levelback.scoring.value.Estimate;

/**
 * A measure with the parts of its standard uncertainty, all in the measure's unit. The combined one is the root of the
 * sum of their squares (JCGM 100:2008 5.1.2).
 *
 * @param estimate value, interval, strides behind it, method
 * @param spread from how she varies from round to round (type A); NaN where one round cannot show it
 * @param timing from the frame period
 * @param digitising from placing the prints
 * @param calibration from the scale that all prints share
 */
public record GaitFigure(Estimate estimate, double spread, double timing, double digitising, double calibration) {

    /** Combined standard uncertainty; without the spread where that is not known. */
    public double combined() {
        double known = Double.isNaN(spread) ? 0 : spread;
        return Math.sqrt(known * known + propagated() * propagated());
    }

    /** The part propagated from the measurement. */
    public double propagated() {
        return Math.sqrt(timing * timing + digitising * digitising + calibration * calibration);
    }
}
