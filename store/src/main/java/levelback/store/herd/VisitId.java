package levelback.store.herd;

import java.util.UUID;

/** Identity of a visit; the same in every copy of the book. */
public record VisitId(UUID uuid) {
    /** A new identity. */
    public static VisitId fresh() {
        return new VisitId(UUID.randomUUID());
    }
}
