package levelback.store.herd;

import java.util.UUID;

/** Identity of a score; the same in every copy of the book. */
public record ScoreId(UUID uuid) {
    /** A new identity. */
    public static ScoreId fresh() {
        return new ScoreId(UUID.randomUUID());
    }
}
