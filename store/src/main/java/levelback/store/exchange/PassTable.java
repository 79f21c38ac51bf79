package levelback.store.exchange;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import levelback.scoring.identity.PassSpan;

/**
 * A table of passes: {@code pass,from,to[,direction]}, times by RFC 3339 with their offset.
 *
 * @param rows its passes in the order written
 * @param notes for the reader
 */
public record PassTable(List<PassSpan> rows, List<String> notes) {

    /** Its form. */
    public static final TableForm FORM = TableForm.of(List.of("pass", "from", "to"), List.of("direction"));

    public PassTable {
        rows = List.copyOf(rows);
        notes = List.copyOf(notes);
    }

    /**
     * Reads a table; the first bad row ends it.
     *
     * @throws BadTable also where a pass ends before it begins, comes twice, or there is none
     */
    public static PassTable read(TableSource source) {
        List<PassSpan> rows = new ArrayList<>();
        Map<String, Long> seen = new HashMap<>();
        List<String> notes = TableReader.read(source, FORM, row -> {
            String pass = row.needed("pass");
            Long before = seen.putIfAbsent(pass, row.line());
            if (before != null) {
                throw row.wrong("pass", "\"" + pass + "\" stands on line " + before + " already; keep one of the two.");
            }
            Instant from = ReadTimeTable.time(row, "from");
            Instant to = ReadTimeTable.time(row, "to");
            if (to.isBefore(from)) {
                throw row.wrong("to", "is before from; a pass ends after it begins.");
            }
            rows.add(new PassSpan(pass, from, to));
        });
        if (rows.isEmpty()) {
            throw new BadTable(source.name(), 0, "it has a header and no pass.");
        }
        return new PassTable(rows, notes);
    }
}
