package levelback.store.exchange;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * A table of cows: {@code cow[,official_id,tag,name,birth,calving,parity]}.
 *
 * @param lines its cows with the lines they stand on
 * @param notes for the reader
 */
public record CowTable(List<Line> lines, List<String> notes) {

    /** Its form. */
    public static final TableForm FORM =
            TableForm.of(List.of("cow"), List.of("official_id", "tag", "name", "birth", "calving", "parity"));

    private static final int MOST_CALVINGS = 25;

    /** A cow and the line she stands on; what the table does not say is empty. */
    public record Line(
            long line,
            String cow,
            Optional<String> officialId,
            Optional<String> tag,
            Optional<String> name,
            Optional<LocalDate> birth,
            Optional<LocalDate> calving,
            OptionalInt parity) {}

    public CowTable {
        lines = List.copyOf(lines);
        notes = List.copyOf(notes);
    }

    /** Reads a table; rows that cannot be taken, a cow or a tag that comes twice among them, go to {@code refused}. */
    public static CowTable read(TableSource source, TableForm form, TableReader.Refusal refused) {
        List<Line> lines = new ArrayList<>();
        Map<String, Long> cows = new HashMap<>();
        Map<String, Long> tags = new HashMap<>();
        Map<String, Long> officials = new HashMap<>();
        List<String> notes = TableReader.read(
                source,
                form,
                row -> {
                    Line line = line(row);
                    requireOnce(row, "cow", line.cow(), cows);
                    line.tag().ifPresent(tag -> requireOnce(row, "tag", tag, tags));
                    line.officialId().ifPresent(id -> requireOnce(row, "official_id", id, officials));
                    cows.put(line.cow(), line.line());
                    line.tag().ifPresent(tag -> tags.put(tag, line.line()));
                    line.officialId().ifPresent(id -> officials.put(id, line.line()));
                    lines.add(line);
                },
                refused);
        return new CowTable(lines, notes);
    }

    private static Line line(TableRow row) {
        return new Line(
                row.line(),
                Identities.needed(row, "cow"),
                Identities.ifAny(row, "official_id"),
                Identities.ifAny(row, "tag"),
                Optional.of(row.text("name")).filter(name -> !name.isEmpty()),
                row.dateIfAny("birth"),
                row.dateIfAny("calving"),
                row.whole("parity", 0, MOST_CALVINGS));
    }

    private static void requireOnce(TableRow row, String column, String value, Map<String, Long> before) {
        Long line = before.get(value);
        if (line != null) {
            throw row.wrong(
                    column,
                    "has " + value + " again, which stands on line " + line + " already; keep one of the two rows.");
        }
    }
}
