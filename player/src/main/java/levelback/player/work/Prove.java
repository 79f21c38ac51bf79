package levelback.player.work;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import levelback.scoring.proof.Comparison;
import levelback.scoring.proof.Proof;
import levelback.scoring.proof.ProofComparison;
import levelback.scoring.proof.ProofQuestion;
import levelback.scoring.proof.ProofResult;
import levelback.scoring.proof.ScoreRow;
import levelback.scoring.proof.TrimRow;
import levelback.store.book.Book;
import levelback.store.exchange.ScoreTable;
import levelback.store.exchange.TableSource;
import levelback.store.exchange.TrimTable;
import levelback.store.herd.Herd;

/** The step behind the Proof page and the command {@code proof}: did the scores find the lesions? Blocking. */
public final class Prove {

    /** Two scorers to be compared. */
    public record Pair(String a, String b) {}

    /**
     * An answer from two tables.
     *
     * @param comparison of two scorers, where it was asked for
     * @param notes what a reader should know of the tables, such as columns that were not used
     */
    public record FromTables(ProofResult result, Optional<ProofComparison> comparison, List<String> notes) {
        public FromTables {
            notes = List.copyOf(notes);
        }
    }

    private Prove() {}

    /**
     * Answers from two tables.
     *
     * @throws levelback.store.exchange.BadTable with one sentence where a table cannot be used
     * @throws BadInput where a scorer asked for is not in the scores
     */
    public static FromTables fromTables(
            TableSource scores, TableSource trims, ProofQuestion question, Optional<Pair> compared) {
        ScoreTable scoreTable = ScoreTable.read(scores);
        TrimTable trimTable = TrimTable.read(trims);
        List<String> notes = new java.util.ArrayList<>(scoreTable.notes());
        notes.addAll(trimTable.notes());
        List<ScoreRow> scoreRows = scoreTable.rows();
        List<TrimRow> trimRows = trimTable.rows();
        Optional<ProofComparison> comparison =
                compared.map(pair -> compareRows(scoreRows, trimRows, question, pair, scores.name()));
        return new FromTables(ofRows(scoreRows, trimRows, question, scores.name()), comparison, notes);
    }

    /**
     * Two scorers of a herd on the cows that both scored.
     *
     * @throws BadInput where one of them has no score in the herd
     */
    public static ProofComparison compare(BookRows rows, ProofQuestion question, Pair pair) {
        return compareRows(rows.scores(), rows.trims(), question, pair, "the book");
    }

    private static ProofComparison compareRows(
            List<ScoreRow> scores, List<TrimRow> trims, ProofQuestion question, Pair pair, String where) {
        known(scores, pair.a(), where);
        known(scores, pair.b(), where);
        return Comparison.of(scores, trims, question, pair.a(), pair.b());
    }

    /**
     * Answers from a herd's scores in force and its cards. The cow of an observation is her identity as text.
     *
     * @throws BadInput where the scorer asked for has no score in the herd
     */
    public static ProofResult fromBook(Book book, Herd herd, ProofQuestion question) {
        BookRows rows = BookRows.of(book, herd);
        return ofRows(rows.scores(), rows.trims(), question, "herd " + herd.name());
    }

    /** Answers from rows read before, so that another question need not read the book again. */
    public static ProofResult fromRows(BookRows rows, ProofQuestion question) {
        return ofRows(rows.scores(), rows.trims(), question, "the book");
    }

    private static ProofResult ofRows(
            List<ScoreRow> scores, List<TrimRow> trims, ProofQuestion question, String where) {
        question.scorer().ifPresent(wanted -> known(scores, wanted, where));
        return Proof.of(scores, trims, question);
    }

    private static void known(List<ScoreRow> scores, String wanted, String where) {
        if (scores.stream().noneMatch(row -> row.scorer().equals(wanted))) {
            String known = scores.stream()
                    .map(ScoreRow::scorer)
                    .distinct()
                    .sorted()
                    .limit(20)
                    .collect(Collectors.joining(", "));
            throw new BadInput(where + ": no score by \"" + wanted + "\"; the scorers are " + known + ".");
        }
    }
}
