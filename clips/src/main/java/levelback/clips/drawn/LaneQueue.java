package levelback.clips.drawn;

import java.util.List;

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
}
