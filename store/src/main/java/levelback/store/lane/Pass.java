package levelback.store.lane;

import java.util.Optional;
import levelback.scoring.value.MediaTime;
import levelback.store.herd.CowId;

/**
 * One cow walking past once: a span of a recording.
 *
 * @param fromFrame first frame, numbered in the recording
 * @param toFrame last frame, included
 * @param cow which cow; empty while unknown
 */
public record Pass(
        PassId id,
        RecordingId recording,
        int fromFrame,
        int toFrame,
        MediaTime from,
        MediaTime to,
        Direction direction,
        Optional<CowId> cow) {

    /** The way she walks across the picture. */
    public enum Direction {
        LEFT_TO_RIGHT("left-to-right"),
        RIGHT_TO_LEFT("right-to-left"),
        UNKNOWN("unknown");

        private final String key;

        Direction(String key) {
            this.key = key;
        }

        /** Stable name in files. */
        public String key() {
            return key;
        }
    }
}
