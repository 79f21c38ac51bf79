package levelback.store.herd;

import java.util.UUID;

/** Identity of a cow; the same in every copy of the book. */
public record CowId(UUID uuid) {
    /** A new identity. */
    public static CowId fresh() {
        return new CowId(UUID.randomUUID());
    }
}
