package levelback.store.herd;

import java.time.Instant;
import java.util.Optional;
import levelback.scoring.value.Leg;
import levelback.scoring.value.MediaTime;
import levelback.store.lane.PassId;

/**
 * A sign or a foot finding at its moment.
 *
 * @param key {@code Sign.key()}, {@code FootSign.key()}, or {@code cannot-score}
 * @param recordingFrame frame number in the recording at which it was set
 * @param time the stream's own time stamp of that frame
 * @param note free words; empty text for none
 */
public record Tag(
        TagId id,
        PassId pass,
        PersonId by,
        Kind kind,
        String key,
        Optional<Leg> leg,
        int recordingFrame,
        MediaTime time,
        String note,
        Instant at) {

    /** What a tag is about. */
    public enum Kind {
        SIGN,
        FOOT_FINDING,
        /** This scorer cannot score this pass; the note says why. */
        CANNOT_SCORE
    }
}
