package levelback.scoring.identity;

import java.time.Instant;

/**
 * One reading of a tag at a gate.
 *
 * @param at by the reader's own clock
 * @param tag what was read, not empty
 * @param reader which reader; empty text where nothing says
 */
public record GateReading(Instant at, String tag, String reader) {

    /** @throws IllegalArgumentException if the tag is empty */
    public GateReading {
        if (tag.isEmpty()) {
            throw new IllegalArgumentException("a reading without a tag, at " + at);
        }
    }
}
