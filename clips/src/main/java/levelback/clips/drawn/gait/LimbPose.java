package levelback.clips.drawn.gait;

import levelback.scoring.value.Leg;

/**
 * A limb at an instant, in the cow frame.
 *
 * @param leg which
 * @param root the scapula's turning point, or the hip
 * @param shoulder point of the shoulder; in a hind limb the hip
 * @param knee elbow, or stifle
 * @param joint carpus, or hock
 * @param fetlock fetlock
 * @param coronet middle of the coronet
 * @param toe tip of the toe
 * @param pitchRad how far the heel is up
 * @param planted whether the foot stands
 */
public record LimbPose(
        Leg leg,
        Spot root,
        Spot shoulder,
        Spot knee,
        Spot joint,
        Spot fetlock,
        Spot coronet,
        Spot toe,
        double pitchRad,
        boolean planted) {}
