package levelback.player.work;

import java.util.List;
import levelback.scoring.agreement.Agreement;
import levelback.scoring.agreement.AgreementQuestion;
import levelback.scoring.agreement.AgreementResult;
import levelback.scoring.agreement.Ratings;
import levelback.store.exchange.RatingTable;
import levelback.store.exchange.TableSource;

/** The step behind the Agreement page and the command {@code agreement}: do scorers agree? Blocking. */
public final class Agree {

    /**
     * An answer from a table.
     *
     * @param notes what a reader should know of the table, such as columns that were not used
     */
    public record FromTable(AgreementResult result, List<String> notes) {
        public FromTable {
            notes = List.copyOf(notes);
        }
    }

    private Agree() {}

    /**
     * Answers from a table.
     *
     * @param scale levels of the scale; none to take the scores that occur
     * @throws levelback.store.exchange.BadTable with one sentence where the table cannot be used
     */
    public static FromTable fromTable(TableSource ratings, AgreementQuestion question, double... scale) {
        RatingTable table = RatingTable.read(ratings, scale);
        return new FromTable(Agreement.of(table.ratings(), question), table.notes());
    }

    /** Answers from scores that were read before. */
    public static AgreementResult ofRatings(Ratings ratings, AgreementQuestion question) {
        return Agreement.of(ratings, question);
    }
}
