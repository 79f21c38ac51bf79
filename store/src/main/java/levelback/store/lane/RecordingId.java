package levelback.store.lane;

import java.util.UUID;

/** Identity of a recording; the same in every copy of the book. */
public record RecordingId(UUID uuid) {
    /** A new identity. */
    public static RecordingId fresh() {
        return new RecordingId(UUID.randomUUID());
    }
}
