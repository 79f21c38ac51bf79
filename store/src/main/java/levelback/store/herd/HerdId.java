package levelback.store.herd;

import java.util.UUID;

/** Identity of a herd; the same in every copy of the book. */
public record HerdId(UUID uuid) {
    /** A new identity. */
    public static HerdId fresh() {
        return new HerdId(UUID.randomUUID());
    }
}
