package levelback.store.book;

import java.time.Instant;
import java.util.Optional;
import java.util.UUID;

/**
 * One row of the book that changed, as history and undo know it.
 *
 * @param by who did it; empty text where nobody was signed on
 * @param step the words of the step it belongs to; an undo and a redo are steps of their own
 * @param kind table of the row, such as {@code score} or {@code finding}
 * @param row the row's identity
 * @param from the row before, as a JSON object; empty where it was not there
 * @param to the row after, as a JSON object; {@code gone} is 1 where it was taken off
 */
public record Change(Instant at, String by, String step, String kind, UUID row, Optional<String> from, String to) {}
