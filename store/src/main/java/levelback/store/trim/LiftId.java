package levelback.store.trim;

import java.util.UUID;

/** Identity of a lift; the same in every copy of the book. */
public record LiftId(UUID uuid) {
    /** A new identity. */
    public static LiftId fresh() {
        return new LiftId(UUID.randomUUID());
    }
}
