package levelback.player.work;

import java.util.ArrayList;
import java.util.List;
import levelback.store.exchange.BadTable;
import levelback.store.exchange.TableReader;
import levelback.store.exchange.TableRow;

/** Counts rows as they are taken or refused. */
final class TakenRows implements TableReader.Refusal {

    private String source = "";
    private final List<ImportReport.Refused> refused = new ArrayList<>();
    private final List<String> notes = new ArrayList<>();
    private long taken;
    private long unchanged;

    /** The table whose rows come next. */
    void from(String name) {
        source = name;
    }

    @Override
    public void refuse(TableRow row, BadTable why) {
        refuse(why.line(), why.why());
    }

    void refuse(long line, String why) {
        refused.add(new ImportReport.Refused(source, line, why));
    }

    void taken(boolean isNew) {
        if (isNew) {
            taken++;
        } else {
            unchanged++;
        }
    }

    void note(List<String> more) {
        notes.addAll(more);
    }

    boolean anyRefused() {
        return !refused.isEmpty();
    }

    /** The first refusal as a sentence, with how many more there are. */
    BadInput asBadInput() {
        ImportReport.Refused first = refused.get(0);
        int more = refused.size() - 1;
        String others = more == 0 ? "" : more == 1 ? " One more row is bad." : " " + more + " more rows are bad.";
        return new BadInput(first.source() + (first.line() > 0 ? ", line " + first.line() : "") + ": " + first.why()
                + others + " Nothing was taken; mend the table, or take the other rows with --skip-bad.");
    }

    ImportReport report(String herd, List<String> newCows) {
        return new ImportReport(herd, taken, unchanged, refused, newCows, notes);
    }
}
