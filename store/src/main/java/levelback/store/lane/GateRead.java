package levelback.store.lane;

import java.time.Instant;

/**
 * One reading of a cow's transponder or number at a gate.
 *
 * @param at by the reader's own clock
 * @param reader which reader; empty text where the file does not say
 */
public record GateRead(Instant at, String tag, String reader) {}
