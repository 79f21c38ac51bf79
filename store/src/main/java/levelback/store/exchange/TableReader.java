package levelback.store.exchange;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.regex.Pattern;

/**
 * The one reader of every table that comes in, for the book and for the commands.
 *
 * <p>A header row; comma, semicolon or tab, found out from the header; UTF-8 with or without byte order mark, else
 * Windows-1252; quotes by RFC 4180; columns in any order and any case; unknown columns are left out with a note. Dates
 * are ISO. A decimal comma is accepted only where it cannot be a separator: with semicolon or tab. Blank lines are
 * skipped; every other row must have as many cells as the header.
 */
public final class TableReader {

    private static final Pattern NUMBER = Pattern.compile("[+-]?(\\d+(\\.\\d*)?|\\.\\d+)([eE][+-]?\\d{1,4})?");
    private static final Pattern ISO_DATE = Pattern.compile("\\d{4}-\\d{2}-\\d{2}");

    private final TableSource source;
    private final TableForm form;
    private final char separator;
    private final Map<String, Integer> columns = new HashMap<>();
    private final Map<String, String> theirs = new HashMap<>();
    private final Map<String, Optional<LocalDate>> dates = new HashMap<>();
    private final List<String> notes = new ArrayList<>();
    private List<String> header = List.of();

    private TableReader(TableSource source, TableForm form) {
        this.source = source;
        this.form = form;
        this.separator = separatorOf(source.text());
    }

    /**
     * Reads a table row by row; the first bad row ends it.
     *
     * @return notes for the reader, such as columns that were not used
     * @throws BadTable naming file, line and column
     */
    public static List<String> read(TableSource source, TableForm form, Consumer<TableRow> each) {
        return read(source, form, each, (row, bad) -> {
            throw bad;
        });
    }

    /** What becomes of a row that cannot be taken. */
    @FunctionalInterface
    public interface Refusal {
        /** Keeps the row, or throws to end the reading. */
        void refuse(TableRow row, BadTable why);
    }

    /**
     * Reads a table row by row; rows that cannot be taken are handed to {@code refused}.
     *
     * @return notes for the reader
     * @throws BadTable if the table as a whole cannot be read
     */
    public static List<String> read(TableSource source, TableForm form, Consumer<TableRow> each, Refusal refused) {
        TableReader reader = new TableReader(source, form);
        reader.rows(each, refused);
        return List.copyOf(reader.notes);
    }

    /**
     * The headings of a table as they stand, for a person who has to say which is which.
     *
     * @throws BadTable if there is no header
     */
    public static List<String> headings(TableSource source) {
        TableReader reader = new TableReader(source, TableForm.of(List.of(), List.of()));
        try (CsvReader<CsvRecord> csv = reader.csv()) {
            Iterator<CsvRecord> records = csv.iterator();
            if (!records.hasNext()) {
                throw reader.empty();
            }
            return List.copyOf(records.next().getFields());
        } catch (IOException | CsvParseException broken) {
            throw reader.brokenQuote(1);
        }
    }

    private void rows(Consumer<TableRow> each, Refusal refused) {
        TableRow row = new TableRow(this);
        long line = 1;
        try (CsvReader<CsvRecord> csv = csv()) {
            Iterator<CsvRecord> records = csv.iterator();
            if (!records.hasNext()) {
                throw empty();
            }
            CsvRecord first = records.next();
            header(first.getStartingLineNumber(), first.getFields());
            while (records.hasNext()) {
                CsvRecord next = records.next();
                line = next.getStartingLineNumber();
                if (isBlank(next)) {
                    continue;
                }
                row.move(line, next.getFields());
                try {
                    if (next.getFieldCount() != header.size()) {
                        throw new BadTable(
                                source.name(),
                                line,
                                "the row has " + next.getFieldCount() + " cells, the header has " + header.size()
                                        + "; mend the row.");
                    }
                    each.accept(row);
                } catch (BadTable bad) {
                    refused.refuse(row, bad);
                }
            }
        } catch (CsvParseException broken) {
            throw brokenQuote(line + 1);
        } catch (IOException impossible) {
            throw new BadTable(source.name(), line, "it broke off while being read.");
        }
    }

    private CsvReader<CsvRecord> csv() {
        requireClosedQuotes();
        return CsvReader.builder()
                .fieldSeparator(separator)
                .quoteCharacter('"')
                .skipEmptyLines(true)
                .allowExtraFields(true)
                .allowMissingFields(true)
                .allowExtraCharsAfterClosingQuote(false)
                .maxBufferSize(Integer.MAX_VALUE / 4)
                .ofCsvRecord(source.text());
    }

    /** The parser takes an open quote at the end for closed; the rest of the table would be lost in one cell. */
    private void requireClosedQuotes() {
        String text = source.text();
        boolean open = false;
        boolean fieldStarts = true;
        long line = 1;
        long openedOn = 1;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (open) {
                if (c == '"') {
                    if (i + 1 < text.length() && text.charAt(i + 1) == '"') {
                        i++;
                    } else {
                        open = false;
                    }
                }
            } else if (c == '"' && fieldStarts) {
                open = true;
                openedOn = line;
            }
            fieldStarts = !open && (c == separator || c == '\n' || c == '\r');
            if (c == '\n') {
                line++;
            }
        }
        if (open) {
            throw brokenQuote(openedOn);
        }
    }

    private void header(long line, List<String> headings) {
        header = List.copyOf(headings);
        List<String> unused = new ArrayList<>();
        for (int i = 0; i < headings.size(); i++) {
            String heading = headings.get(i).strip();
            String ours = form.ours(heading);
            if (form.knows(ours)) {
                if (columns.putIfAbsent(ours, i) != null) {
                    throw new BadTable(
                            source.name(), line, "column " + heading + " stands there twice; take one of them out.");
                }
                theirs.put(ours, heading);
            } else if (!heading.isEmpty()) {
                unused.add(heading);
            }
        }
        for (String needed : form.required()) {
            if (!columns.containsKey(needed)) {
                throw new BadTable(
                        source.name(),
                        line,
                        "column " + needed + " is missing; the header has "
                                + String.join(", ", headings).strip() + "; name the columns "
                                + String.join(", ", form.required()) + ".");
            }
        }
        if (!unused.isEmpty()) {
            notes.add(source.name() + ": not used: " + (unused.size() == 1 ? "column " : "columns ")
                    + String.join(", ", unused) + ".");
        }
    }

    int indexOf(String column) {
        if (!form.knows(column)) {
            throw new IllegalArgumentException("not a column of this form: " + column);
        }
        return columns.getOrDefault(column, -1);
    }

    String theirs(String column) {
        return theirs.getOrDefault(column, column);
    }

    String name() {
        return source.name();
    }

    boolean takesComma() {
        return form.decimalComma() || separator != ',';
    }

    OptionalDouble number(String text) {
        if (text.length() == 1) {
            char c = text.charAt(0);
            return c >= '0' && c <= '9' ? OptionalDouble.of(c - '0') : OptionalDouble.empty();
        }
        String plain = takesComma() && text.indexOf('.') < 0 ? text.replace(',', '.') : text;
        if (!NUMBER.matcher(plain).matches()) {
            return OptionalDouble.empty();
        }
        double value = Double.parseDouble(plain);
        // Minus zero would be a level of its own.
        return Double.isFinite(value) ? OptionalDouble.of(value + 0.0) : OptionalDouble.empty();
    }

    Optional<LocalDate> date(String text) {
        Optional<LocalDate> known = dates.get(text);
        if (known == null) {
            known = parseDate(text);
            dates.put(text, known);
        }
        return known;
    }

    String dateExample() {
        LocalDate example = LocalDate.of(2026, 3, 14);
        return form.date().map(format -> format.format(example)).orElse("2026-03-14");
    }

    private Optional<LocalDate> parseDate(String text) {
        try {
            if (form.date().isPresent()) {
                return Optional.of(LocalDate.parse(text, form.date().get()));
            }
            return ISO_DATE.matcher(text).matches() ? Optional.of(LocalDate.parse(text)) : Optional.empty();
        } catch (DateTimeException noDate) {
            return Optional.empty();
        }
    }

    private BadTable empty() {
        return new BadTable(source.name(), 0, "it is empty; a header row and data rows are needed.");
    }

    private BadTable brokenQuote(long line) {
        return new BadTable(
                source.name(), line, "a quotation mark is not closed or stands inside a cell; mend the row.");
    }

    private static boolean isBlank(CsvRecord row) {
        for (String field : row.getFields()) {
            if (!field.isBlank()) {
                return false;
            }
        }
        return true;
    }

    /** The separator that stands most often in the header outside quotes; comma where there is one column. */
    private static char separatorOf(String text) {
        Map<Character, Integer> seen = new TreeMap<>();
        boolean quoted = false;
        boolean any = false;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c == '"') {
                quoted = !quoted;
            } else if (!quoted && (c == '\n' || c == '\r')) {
                if (any) {
                    break;
                }
            } else if (!quoted && (c == ',' || c == ';' || c == '\t')) {
                seen.merge(c, 1, Integer::sum);
            }
            any |= !Character.isWhitespace(c);
        }
        char best = ',';
        for (Map.Entry<Character, Integer> entry : seen.entrySet()) {
            if (entry.getValue() > seen.getOrDefault(best, 0)) {
                best = entry.getKey();
            }
        }
        return best;
    }
}
