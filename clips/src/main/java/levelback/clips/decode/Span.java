package levelback.clips.decode;

/**
 * A run of frames.
 *
 * @param first number of the first frame, in presentation order
 * @param last number of the last, included
 */
public record Span(int first, int last) {

    /** @throws IllegalArgumentException if it is empty or begins below 0 */
    public Span {
        if (first < 0 || last < first) {
            throw new IllegalArgumentException("no span of frames: " + first + " to " + last);
        }
    }

    /** How many frames. */
    public int frames() {
        return last - first + 1;
    }

    /** Whether a frame lies in it. */
    public boolean has(int frame) {
        return frame >= first && frame <= last;
    }
}
