package levelback.store.trim;

import java.util.UUID;

/** Identity of a foot; the same in every copy of the book. */
public record FootId(UUID uuid) {
    /** A new identity. */
    public static FootId fresh() {
        return new FootId(UUID.randomUUID());
    }
}
