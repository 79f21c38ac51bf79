package levelback.store.exchange;

import java.util.Optional;
import java.util.regex.Pattern;

/** Numbers that name an animal: text, zeros kept, and never what a spreadsheet made of them. */
final class Identities {

    /** {@code 2.76E+14} is what a spreadsheet shows of a fifteen-digit transponder; the last digits are lost. */
    private static final Pattern ROUNDED = Pattern.compile("\\d+([.,]\\d+)?[eE][+]\\d+");

    private static final int LONGEST = 40;

    private Identities() {}

    static String needed(TableRow row, String column) {
        return checked(row, column, row.needed(column));
    }

    static Optional<String> ifAny(TableRow row, String column) {
        String text = row.text(column);
        return text.isEmpty() ? Optional.empty() : Optional.of(checked(row, column, text));
    }

    private static String checked(TableRow row, String column, String text) {
        if (ROUNDED.matcher(text).matches()) {
            throw row.wrong(
                    column,
                    "\"" + text + "\" was rounded by a spreadsheet; format the column as text and export it again.");
        }
        if (text.length() > LONGEST || text.codePoints().anyMatch(Character::isISOControl)) {
            throw row.wrong(column, "is no number of an animal; write 1 to " + LONGEST + " signs on one line.");
        }
        return text;
    }
}
