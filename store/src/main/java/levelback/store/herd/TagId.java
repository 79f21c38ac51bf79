package levelback.store.herd;

import java.util.UUID;

/** Identity of a tag; the same in every copy of the book. */
public record TagId(UUID uuid) {
    /** A new identity. */
    public static TagId fresh() {
        return new TagId(UUID.randomUUID());
    }
}
