package levelback.store.exchange;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import levelback.scoring.value.Leg;

/** One row of a table, read by the names of our columns. Valid only while it is handed out. */
public final class TableRow {

    private final TableReader reader;
    private long line;
    private List<String> fields = List.of();

    TableRow(TableReader reader) {
        this.reader = reader;
    }

    void move(long newLine, List<String> newFields) {
        line = newLine;
        fields = newFields;
    }

    /** The line it begins on, from 1. */
    public long line() {
        return line;
    }

    /** All fields as they stand, for a list of refused rows. */
    public List<String> fields() {
        return List.copyOf(fields);
    }

    /** The text of a column without blanks around it; empty text where the column is not there. */
    public String text(String column) {
        int index = reader.indexOf(column);
        return index < 0 || index >= fields.size() ? "" : fields.get(index).strip();
    }

    /** The text of a column that may not be empty. */
    public String needed(String column) {
        String text = text(column);
        if (text.isEmpty()) {
            throw wrong(column, "is empty; fill it in or take the row out.");
        }
        return text;
    }

    /** A date; ISO unless the form says otherwise. */
    public LocalDate date(String column) {
        String text = needed(column);
        return reader.date(text)
                .orElseThrow(
                        () -> wrong(column, "\"" + shown(text) + "\" is no date; write " + reader.dateExample() + "."));
    }

    /** A date or nothing. */
    public Optional<LocalDate> dateIfAny(String column) {
        return text(column).isEmpty() ? Optional.empty() : Optional.of(date(column));
    }

    /** A finite number, or empty where the cell is empty. */
    public OptionalDouble number(String column) {
        String text = text(column);
        if (text.isEmpty()) {
            return OptionalDouble.empty();
        }
        OptionalDouble number = reader.number(text);
        if (number.isEmpty()) {
            throw wrong(
                    column,
                    "\"" + shown(text) + "\" is no number; write digits such as 2"
                            + (reader.takesComma() ? " or 2,5." : " or 2.5."));
        }
        return number;
    }

    /** A whole number between two ends, both in, or empty where the cell is empty. */
    public OptionalInt whole(String column, int least, int most) {
        OptionalDouble number = number(column);
        if (number.isEmpty()) {
            return OptionalInt.empty();
        }
        double value = number.getAsDouble();
        if (value != Math.rint(value) || value < least || value > most) {
            throw wrong(
                    column,
                    "\"" + shown(text(column)) + "\" must be a whole number from " + least + " to " + most + ".");
        }
        return OptionalInt.of((int) value);
    }

    /** A leg, or empty where the cell is empty. */
    public Optional<Leg> leg(String column) {
        String text = text(column);
        return switch (text.toUpperCase(Locale.ROOT)) {
            case "" -> Optional.empty();
            case "LF" -> Optional.of(Leg.LF);
            case "RF" -> Optional.of(Leg.RF);
            case "LH" -> Optional.of(Leg.LH);
            case "RH" -> Optional.of(Leg.RH);
            default -> throw wrong(column, "\"" + shown(text) + "\" is no leg; write LF, RF, LH or RH.");
        };
    }

    /**
     * The error about a cell.
     *
     * @param problem what is wrong with it and what to do, ending in a full stop
     */
    public BadTable wrong(String column, String problem) {
        return new BadTable(reader.name(), line, "column " + reader.theirs(column) + " " + problem);
    }

    private static String shown(String text) {
        String oneLine = text.replaceAll("\\p{Cntrl}+", " ");
        return oneLine.length() > 40 ? oneLine.substring(0, 40) + "…" : oneLine;
    }
}
