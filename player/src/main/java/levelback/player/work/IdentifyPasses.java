package levelback.player.work;

import java.util.ArrayList;
import java.util.List;
import levelback.scoring.identity.Identification;
import levelback.scoring.identity.Identify;
import levelback.store.exchange.PassTable;
import levelback.store.exchange.ReadTimeTable;
import levelback.store.exchange.TableSource;

/** The step behind the Lane page and the command {@code identify}: which cow each pass is. Blocking. */
public final class IdentifyPasses {

    /**
     * An answer from two tables.
     *
     * @param notes what a reader should know of the tables and of the answer
     */
    public record FromTables(Identification result, List<String> notes) {
        public FromTables {
            notes = List.copyOf(notes);
        }
    }

    private IdentifyPasses() {}

    /**
     * Answers from two tables.
     *
     * @throws levelback.store.exchange.BadTable with one sentence where a table cannot be used
     */
    public static FromTables fromTables(TableSource passes, TableSource reads) {
        PassTable passTable = PassTable.read(passes);
        ReadTimeTable readTable = ReadTimeTable.read(reads);
        Identification result = Identify.of(passTable.rows(), readTable.rows());
        List<String> notes = new ArrayList<>(passTable.notes());
        notes.addAll(readTable.notes());
        notes.addAll(result.notes());
        return new FromTables(result, notes);
    }
}
