package levelback.clips.index;

import java.util.Optional;

/**
 * Two recordings walked in step, joined at a chosen frame of each: then and now. Time runs equally fast in both, by each
 * stream's own stamps, so two cameras of different rates stay together. Immutable; knows times only, no pictures.
 *
 * @param left the recording that leads
 * @param leftFrame the frame of it that is joined
 * @param right the recording that follows
 * @param rightFrame the frame of it that is shown with that one
 */
public record Pair(ClipIndex left, int leftFrame, ClipIndex right, int rightFrame) {

    private static final long LONE_US = 40_000;

    /** @throws IllegalArgumentException if a frame is not in its recording */
    public Pair {
        require(left, leftFrame);
        require(right, rightFrame);
    }

    private static void require(ClipIndex index, int frame) {
        if (frame < 0 || frame >= index.frames().size()) {
            throw new IllegalArgumentException(
                    "no frame " + frame + " among " + index.frames().size());
        }
    }

    /** Time in the right recording that stands beside a time in the left one, in microseconds; may lie outside it. */
    public long rightTimeUs(long leftTimeUs) {
        return leftTimeUs - timeUs(left, leftFrame) + timeUs(right, rightFrame);
    }

    /** Time in the left recording that stands beside a time in the right one, in microseconds; may lie outside it. */
    public long leftTimeUs(long rightTimeUs) {
        return rightTimeUs - timeUs(right, rightFrame) + timeUs(left, leftFrame);
    }

    /**
     * The right frame on show while a left one is: the joined one beside the joined one, else the last whose time has come;
     * empty where the right recording has not begun or is over.
     */
    public Optional<Integer> rightOf(int frame) {
        return frame == leftFrame ? Optional.of(rightFrame) : at(right, rightTimeUs(timeUs(left, frame)));
    }

    /** The left frame on show while a right one is; as {@link #rightOf}. */
    public Optional<Integer> leftOf(int frame) {
        return frame == rightFrame ? Optional.of(leftFrame) : at(left, leftTimeUs(timeUs(right, frame)));
    }

    /** First left frame beside which the right recording has a picture too, if there is one. */
    public Optional<Integer> firstLeft() {
        return edge(0, left.frames().size(), 1);
    }

    /** Last left frame beside which the right recording has a picture too, if there is one. */
    public Optional<Integer> lastLeft() {
        return edge(left.frames().size() - 1, -1, -1);
    }

    /** Joined at two other frames. */
    public Pair joinedAt(int newLeftFrame, int newRightFrame) {
        return new Pair(left, newLeftFrame, right, newRightFrame);
    }

    private Optional<Integer> edge(int from, int end, int step) {
        for (int frame = from; frame != end; frame += step) {
            if (rightOf(frame).isPresent()) {
                return Optional.of(frame);
            }
        }
        return Optional.empty();
    }

    private static long timeUs(ClipIndex index, int frame) {
        return index.frames().get(frame).timeUs();
    }

    private static Optional<Integer> at(ClipIndex index, long timeUs) {
        int last = index.frames().size() - 1;
        // The last frame stays as long as the one before it did.
        long stayUs = last == 0 ? LONE_US : timeUs(index, last) - timeUs(index, last - 1);
        boolean outside = timeUs < timeUs(index, 0) || timeUs >= timeUs(index, last) + Math.max(1, stayUs);
        return outside ? Optional.empty() : Optional.of(index.frameAt(timeUs));
    }
}
