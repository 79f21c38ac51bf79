package levelback.player.work;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import levelback.scoring.gait.BodyMark;
import levelback.scoring.gait.Gait;
import levelback.scoring.gait.GaitQuestion;
import levelback.scoring.gait.GaitResult;
import levelback.store.exchange.FootfallTable;
import levelback.store.exchange.MarkTable;
import levelback.store.exchange.TableSource;

/** The step behind the command {@code gait}: the gait measures of one pass. Blocking. */
public final class MeasureGait {

    /**
     * An answer from tables.
     *
     * @param notes what a reader should know of the tables, such as columns that were not used
     */
    public record FromTables(GaitResult result, List<String> notes) {
        public FromTables {
            notes = List.copyOf(notes);
        }
    }

    private MeasureGait() {}

    /**
     * Measures a pass from its tables.
     *
     * @param pass which pass of the tables; empty where they hold one
     * @throws levelback.store.exchange.BadTable with one sentence where a table cannot be used
     */
    public static FromTables fromTables(
            TableSource footfalls, Optional<TableSource> marks, Optional<String> pass, GaitQuestion question) {
        FootfallTable falls = FootfallTable.read(footfalls, pass);
        List<String> notes = new ArrayList<>(falls.notes());
        List<BodyMark> body = List.of();
        if (marks.isPresent()) {
            MarkTable table = MarkTable.read(marks.get(), pass);
            notes.addAll(table.notes());
            body = table.marks();
        }
        return new FromTables(Gait.of(falls.footfalls(), body, question), notes);
    }
}
