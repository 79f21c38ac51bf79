package levelback.clips.index;

import java.util.List;

/**
 * All frames of a recording in presentation order.
 *
 * @param frames frame {@code n} stands at position {@code n}
 */
public record ClipIndex(List<IndexedFrame> frames) {
    public ClipIndex {
        frames = List.copyOf(frames);
    }

    /** The frame on show at a time: the last whose time is at or before it; frame 0 before the first. */
    public int frameAt(long timeUs) {
        int low = 0;
        int high = frames.size() - 1;
        while (low < high) {
            int middle = (low + high + 1) >>> 1;
            if (frames.get(middle).timeUs() <= timeUs) {
                low = middle;
            } else {
                high = middle - 1;
            }
        }
        return low;
    }
}
