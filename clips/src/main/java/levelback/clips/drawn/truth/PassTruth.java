package levelback.clips.drawn.truth;

import java.util.List;
import levelback.clips.drawn.WalkPlan;

/**
 * One cow's way through the picture.
 *
 * @param pass number, from 1, in order of entering
 * @param walk what was planned
 * @param fromFrame first frame with at least 12 pixels of her (at 960×540, in proportion otherwise)
 * @param toFrame last such frame; below {@code fromFrame} if she never shows
 * @param crowded whether frames of hers show another cow too
 * @param flags {@code stop}, {@code slip}, {@code turn-back}, {@code cut-off}
 * @param strideLengthM her mean stride length, all feet
 * @param strideTimeS her mean stride time
 */
public record PassTruth(
        int pass,
        WalkPlan walk,
        int fromFrame,
        int toFrame,
        boolean crowded,
        List<String> flags,
        double strideLengthM,
        double strideTimeS) {
    public PassTruth {
        flags = List.copyOf(flags);
    }

    /** Whether she shows at all. */
    public boolean seen() {
        return toFrame >= fromFrame;
    }
}
