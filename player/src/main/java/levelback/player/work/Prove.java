package levelback.player.work;

import java.util.List;
import java.util.stream.Collectors;
import levelback.scoring.proof.Proof;
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

    /**
     * An answer from two tables.
     *
     * @param notes what a reader should know of the tables, such as columns that were not used
     */
    public record FromTables(ProofResult result, List<String> notes) {
        public FromTables {
            notes = List.copyOf(notes);
        }
    }

    private Prove() {}

    /**
     * Answers from two tables.
     *
     * @throws levelback.store.exchange.BadTable with one sentence where a table cannot be used
     * @throws BadInput where the scorer asked for is not in the scores
     */
    public static FromTables fromTables(TableSource scores, TableSource trims, ProofQuestion question) {
        ScoreTable scoreTable = ScoreTable.read(scores);
        TrimTable trimTable = TrimTable.read(trims);
        List<String> notes = new java.util.ArrayList<>(scoreTable.notes());
        notes.addAll(trimTable.notes());
        return new FromTables(ofRows(scoreTable.rows(), trimTable.rows(), question, scores.name()), notes);
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
        question.scorer().ifPresent(wanted -> {
            if (scores.stream().noneMatch(row -> row.scorer().equals(wanted))) {
                String known = scores.stream()
                        .map(ScoreRow::scorer)
                        .distinct()
                        .sorted()
                        .limit(20)
                        .collect(Collectors.joining(", "));
                throw new BadInput(where + ": no score by \"" + wanted + "\"; the scorers are " + known + ".");
            }
        });
        return Proof.of(scores, trims, question);
    }
}
