package levelback.store.exchange;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import levelback.scoring.gait.BodyMark;

/**
 * A table of marks on her body: {@code time_s,point,x_m,y_m[,pass]}, rows in any order. A row whose {@code x_m} and
 * {@code y_m} are both empty is a point that nobody could place; it is left out.
 *
 * @param marks in the order of the table
 * @param notes for the reader
 */
public record MarkTable(List<BodyMark> marks, List<String> notes) {

    /** Its form. */
    public static final TableForm FORM = TableForm.of(List.of("time_s", "point", "x_m", "y_m"), List.of("pass"));

    private record Key(String point, double timeS) {}

    public MarkTable {
        marks = List.copyOf(marks);
        notes = List.copyOf(notes);
    }

    /**
     * Reads a table; the first bad row ends it.
     *
     * @param pass which pass of the table; empty for a table of one
     * @throws BadTable also where a point is marked twice at one time, and where there is no mark
     */
    public static MarkTable read(TableSource source, Optional<String> pass) {
        List<BodyMark> marks = new ArrayList<>();
        Map<Key, Long> seen = new HashMap<>();
        Map<String, String> same = new HashMap<>();
        OnePass one = new OnePass(pass);
        List<String> notes = TableReader.read(source, FORM, row -> {
            if (!one.takes(row)) {
                return;
            }
            String point = same.computeIfAbsent(row.needed("point").toLowerCase(Locale.ROOT), p -> p);
            double time = FootfallTable.time(row);
            Long before = seen.putIfAbsent(new Key(point, time), row.line());
            if (before != null) {
                throw row.wrong(
                        "point", "has a mark at that time on line " + before + " already; keep one of the two.");
            }
            if (row.text("x_m").isEmpty() && row.text("y_m").isEmpty()) {
                return;
            }
            row.needed("x_m");
            row.needed("y_m");
            marks.add(new BodyMark(
                    time,
                    point,
                    FootfallTable.metres(row, "x_m").orElseThrow(),
                    FootfallTable.metres(row, "y_m").orElseThrow()));
        });
        if (marks.isEmpty()) {
            throw new BadTable(
                    source.name(),
                    0,
                    pass.map(p -> "no mark of pass " + p + "; check --pass.")
                            .orElse("there is no mark in it; rows with time_s, point, x_m and y_m are needed."));
        }
        return new MarkTable(marks, notes);
    }
}
