package levelback.store.lane;

import java.util.UUID;

/** Identity of a pass; the same in every copy of the book. */
public record PassId(UUID uuid) {
    /** A new identity. */
    public static PassId fresh() {
        return new PassId(UUID.randomUUID());
    }
}
