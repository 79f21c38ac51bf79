package levelback.store.exchange;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;

/**
 * A table of gate reads: {@code time,tag[,reader]}. A time without an offset is by the farm's clock.
 *
 * @param lines its reads with the lines they stand on
 * @param notes for the reader
 */
public record ReadTable(List<Line> lines, List<String> notes) {

    /** Its form. */
    public static final TableForm FORM = TableForm.of(List.of("time", "tag"), List.of("reader"));

    /** A read and the line it stands on. */
    public record Line(long line, Instant at, String tag, String reader) {}

    public ReadTable {
        lines = List.copyOf(lines);
        notes = List.copyOf(notes);
    }

    /** Reads a table; rows that cannot be taken go to {@code refused}. */
    public static ReadTable read(TableSource source, TableForm form, ZoneId farm, TableReader.Refusal refused) {
        List<Line> lines = new ArrayList<>();
        List<String> notes = TableReader.read(
                source,
                form,
                row -> lines.add(
                        new Line(row.line(), time(row, farm), Identities.needed(row, "tag"), row.text("reader"))),
                refused);
        return new ReadTable(lines, notes);
    }

    private static Instant time(TableRow row, ZoneId farm) {
        // RFC 3339 allows a blank and small letters where ISO 8601 has T and Z.
        String text = row.needed("time").toUpperCase(java.util.Locale.ROOT).replaceFirst("^(\\S+) +(\\d)", "$1T$2");
        try {
            return OffsetDateTime.parse(text).toInstant();
        } catch (DateTimeParseException noOffset) {
            try {
                return LocalDateTime.parse(text).atZone(farm).toInstant();
            } catch (DateTimeParseException noTime) {
                throw row.wrong(
                        "time",
                        "\"" + row.text("time") + "\" is no time; write it as 2026-03-14T05:47:16Z or with the offset,"
                                + " as 2026-03-14T06:47:16+01:00.");
            }
        }
    }
}
