package levelback.clips.drawn;

import java.util.ArrayList;
import java.util.List;
import levelback.clips.drawn.gait.Walker;

/**
 * Cows one behind the other: when each enters, when she is half way, how long the recording gets.
 *
 * @param walks the walks with their times of entering
 * @param middlesS when each cow's middle is at the middle of the picture, in seconds from frame 0
 * @param lengthS length of the recording
 */
public record LaneQueue(List<WalkPlan> walks, List<Double> middlesS, double lengthS) {
    public LaneQueue {
        walks = List.copyOf(walks);
        middlesS = List.copyOf(middlesS);
    }

    /**
     * Lines cows up: each enters a while after the one before has left.
     *
     * @param walks in their order; their times of entering are ignored
     * @param camera where they walk past
     * @param gapS empty lane between two, in seconds; negative lets the next enter before the last has left
     */
    public static LaneQueue lined(List<WalkPlan> walks, CameraPlan camera, double gapS) {
        List<WalkPlan> timed = new ArrayList<>();
        List<Double> middles = new ArrayList<>();
        double enterS = LEAD_S;
        double leftS = 0;
        for (WalkPlan walk : walks) {
            WalkPlan entering = walk.enteringAt(enterS);
            Walker walker = new Walker(entering, camera.halfWidthM(0));
            timed.add(entering);
            middles.add(walker.middleTimeS());
            leftS = Math.max(leftS, walker.leaveTimeS());
            enterS = Math.max(enterS + .5, walker.leaveTimeS() + gapS);
        }
        return new LaneQueue(timed, middles, leftS + LEAD_S);
    }

    private static final double LEAD_S = 1.0;
}
