package levelback.clips.drawn.gait;

import java.util.List;
import levelback.scoring.value.Leg;

/**
 * The whole cow at an instant.
 *
 * @param alongM where the middle of the cow frame is, along the way she walks, in metres; 0 is the middle of the picture
 * @param body trunk, neck, head
 * @param limbs in the order of {@link Leg}
 */
public record Pose(double alongM, BodyPose body, List<LimbPose> limbs) {
    public Pose {
        limbs = List.copyOf(limbs);
    }

    /** One limb. */
    public LimbPose limb(Leg leg) {
        for (LimbPose limb : limbs) {
            if (limb.leg() == leg) {
                return limb;
            }
        }
        throw new IllegalStateException("no limb " + leg);
    }
}
