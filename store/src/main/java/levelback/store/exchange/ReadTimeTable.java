package levelback.store.exchange;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import levelback.scoring.identity.GateReading;

/**
 * A table of gate reads for an alignment: {@code time,tag[,reader]}, times by RFC 3339 with their offset. It may have no
 * row.
 *
 * @param rows its reads in the order written
 * @param notes for the reader
 */
public record ReadTimeTable(List<GateReading> rows, List<String> notes) {

    /** Its form. */
    public static final TableForm FORM = TableForm.of(List.of("time", "tag"), List.of("reader"));

    public ReadTimeTable {
        rows = List.copyOf(rows);
        notes = List.copyOf(notes);
    }

    /**
     * Reads a table; the first bad row ends it.
     *
     * @throws BadTable naming file, line and column
     */
    public static ReadTimeTable read(TableSource source) {
        List<GateReading> rows = new ArrayList<>();
        List<String> notes = TableReader.read(
                source,
                FORM,
                row -> rows.add(new GateReading(time(row, "time"), Identities.needed(row, "tag"), row.text("reader"))));
        return new ReadTimeTable(rows, notes);
    }

    /** A time with its offset; without one it could be any hour. */
    static Instant time(TableRow row, String column) {
        // RFC 3339 allows a blank and small letters where ISO 8601 has T and Z.
        String text = row.needed(column).toUpperCase(Locale.ROOT).replaceFirst("^(\\S+) +(\\d)", "$1T$2");
        try {
            return OffsetDateTime.parse(text).toInstant();
        } catch (DateTimeParseException noTime) {
            throw row.wrong(
                    column,
                    "\"" + row.text(column) + "\" is no time with an offset; write it as 2026-03-14T05:47:16Z or"
                            + " 2026-03-14T06:47:16+01:00.");
        }
    }
}
