package levelback.store.herd;

import java.util.UUID;

/** Identity of a person; the same in every copy of the book. */
public record PersonId(UUID uuid) {
    /** A new identity. */
    public static PersonId fresh() {
        return new PersonId(UUID.randomUUID());
    }
}
