package levelback.store.trim;

import java.util.UUID;

/** Identity of a finding; the same in every copy of the book. */
public record FindingId(UUID uuid) {
    /** A new identity. */
    public static FindingId fresh() {
        return new FindingId(UUID.randomUUID());
    }
}
