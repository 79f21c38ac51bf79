package levelback.clips.drawn.truth;

import levelback.scoring.value.Leg;

/**
 * A hoof meeting or leaving the floor, at its true instant (not a frame's time).
 *
 * @param pass number of the pass, from 1
 * @param timeS seconds from frame 0
 * @param leg which leg
 * @param down true: meets the floor; false: leaves it
 * @param xM toe tip along the way she walks, in metres
 * @param yM toe tip's height: 0
 */
public record FootfallTruth(int pass, double timeS, Leg leg, boolean down, double xM, double yM) {}
