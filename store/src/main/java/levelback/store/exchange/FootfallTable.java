package levelback.store.exchange;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import levelback.scoring.gait.Footfall;
import levelback.scoring.value.Leg;

/**
 * A table of footfalls: {@code time_s,leg,event[,x_m,y_m][,pass]}, rows in any order.
 *
 * @param footfalls in the order of the table
 * @param notes for the reader
 */
public record FootfallTable(List<Footfall> footfalls, List<String> notes) {

    /** Its form. */
    public static final TableForm FORM = TableForm.of(List.of("time_s", "leg", "event"), List.of("x_m", "y_m", "pass"));

    private record Key(Leg leg, double timeS) {}

    public FootfallTable {
        footfalls = List.copyOf(footfalls);
        notes = List.copyOf(notes);
    }

    /**
     * Reads a table; the first bad row ends it.
     *
     * @param pass which pass of the table; empty for a table of one
     * @throws BadTable also where a leg has two events at one time, and where there is no footfall
     */
    public static FootfallTable read(TableSource source, Optional<String> pass) {
        List<Footfall> footfalls = new ArrayList<>();
        Map<Key, Long> seen = new HashMap<>();
        OnePass one = new OnePass(pass);
        List<String> notes = TableReader.read(source, FORM, row -> {
            if (!one.takes(row)) {
                return;
            }
            Leg leg = row.leg("leg").orElseThrow(() -> row.wrong("leg", "is empty; write LF, RF, LH or RH."));
            double time = time(row);
            Long before = seen.putIfAbsent(new Key(leg, time), row.line());
            if (before != null) {
                throw row.wrong(
                        "time_s",
                        "gives " + leg + " an event at a time that line " + before
                                + " has already; a leg has one event at a time, keep one of the two.");
            }
            footfalls.add(new Footfall(time, leg, event(row), metres(row, "x_m"), metres(row, "y_m")));
        });
        if (footfalls.isEmpty()) {
            throw new BadTable(
                    source.name(),
                    0,
                    pass.map(p -> "no footfall of pass " + p + "; check --pass.")
                            .orElse("there is no footfall in it; rows with time_s, leg and event are needed."));
        }
        return new FootfallTable(footfalls, notes);
    }

    /** A time in seconds, within what doubles carry to a microsecond. */
    static double time(TableRow row) {
        row.needed("time_s");
        return inRange(row, "time_s", row.number("time_s").orElseThrow(), 1e9, "seconds");
    }

    /** A place in metres, or empty where the cell is. */
    static OptionalDouble metres(TableRow row, String column) {
        OptionalDouble metres = row.number(column);
        return metres.isEmpty() ? metres : OptionalDouble.of(inRange(row, column, metres.getAsDouble(), 1e6, "metres"));
    }

    private static double inRange(TableRow row, String column, double value, double most, String unit) {
        if (Math.abs(value) > most) {
            throw row.wrong(column, "\"" + row.text(column) + "\" is too large for " + unit + "; check the unit.");
        }
        return value;
    }

    private static Footfall.Event event(TableRow row) {
        String text = row.needed("event");
        return switch (text.toLowerCase(Locale.ROOT)) {
            case "down" -> Footfall.Event.DOWN;
            case "up" -> Footfall.Event.UP;
            default -> throw row.wrong("event", "\"" + shown(text) + "\" is no event; write down or up.");
        };
    }

    private static String shown(String text) {
        String oneLine = text.replaceAll("\\p{Cntrl}+", " ");
        return oneLine.length() > 40 ? oneLine.substring(0, 40) + "…" : oneLine;
    }
}
