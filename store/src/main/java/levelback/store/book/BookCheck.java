package levelback.store.book;

import java.util.List;

/**
 * What a look through a whole book found.
 *
 * @param problems one sentence each; empty for a sound book
 * @param schema the book's schema
 */
public record BookCheck(List<String> problems, int schema, Counts counts) {
    public BookCheck {
        problems = List.copyOf(problems);
    }

    /** Whether nothing is wrong. */
    public boolean ok() {
        return problems.isEmpty();
    }

    /** How many of each the book holds; scores in force only, and a card with feet or a refused lift is one trim. */
    public record Counts(long herds, long cows, long visits, long recordings, long passes, long scores, long trims) {}
}
