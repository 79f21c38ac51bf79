package levelback.player.work.export;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * One table as text: RFC 4180 (comma, CRLF, quotes doubled), rows in an order that depends on nothing but their content.
 * With {@code guarded}, text that a spreadsheet would run as a formula (it begins with = + - @, a tab or a return) gets an
 * apostrophe in front; the archival form stays raw.
 */
final class CsvText {

    private final List<String> header;
    private final boolean guarded;
    private final List<List<String>> rows = new ArrayList<>();

    CsvText(boolean guarded, String... header) {
        this.guarded = guarded;
        this.header = List.of(header);
    }

    void row(String... cells) {
        if (cells.length != header.size()) {
            throw new IllegalArgumentException(cells.length + " cells under " + header.size() + " headings");
        }
        rows.add(List.of(cells));
    }

    int size() {
        return rows.size();
    }

    String text() {
        rows.sort(CsvText::compare);
        return inOrder();
    }

    /** The rows as they were added. */
    String inOrder() {
        StringBuilder text = new StringBuilder();
        line(text, header);
        rows.forEach(row -> line(text, row));
        return text.toString();
    }

    private void line(StringBuilder text, List<String> cells) {
        for (int i = 0; i < cells.size(); i++) {
            text.append(i == 0 ? "" : ",").append(cell(cells.get(i)));
        }
        text.append("\r\n");
    }

    private String cell(String raw) {
        String value = guarded && !raw.isEmpty() && "=+-@\t\r".indexOf(raw.charAt(0)) >= 0 ? "'" + raw : raw;
        boolean quoted = value.chars().anyMatch(c -> c == '"' || c == ',' || c == '\r' || c == '\n' || c == ';')
                || !value.equals(value.strip());
        return quoted ? '"' + value.replace("\"", "\"\"") + '"' : value;
    }

    private static int compare(List<String> one, List<String> other) {
        for (int i = 0; i < one.size(); i++) {
            int c = Comparator.<String>naturalOrder().compare(one.get(i), other.get(i));
            if (c != 0) {
                return c;
            }
        }
        return 0;
    }
}
