package levelback.store.exchange;

import java.time.format.DateTimeFormatter;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/**
 * The columns that a table may have and how it writes them.
 *
 * @param required columns that must be there
 * @param optional columns that are read where they are there
 * @param headings other headings for our columns: theirs, in lower case, to ours
 * @param date how dates are written; empty for ISO
 * @param decimalComma whether a decimal comma is accepted whatever the separator
 */
public record TableForm(
        Set<String> required,
        Set<String> optional,
        Map<String, String> headings,
        Optional<DateTimeFormatter> date,
        boolean decimalComma) {
    public TableForm {
        required = java.util.Collections.unmodifiableSet(new LinkedHashSet<>(required));
        optional = java.util.Collections.unmodifiableSet(new LinkedHashSet<>(optional));
        headings = Map.copyOf(headings);
    }

    /** A form with our own headings, ISO dates and decimal point. */
    public static TableForm of(List<String> required, List<String> optional) {
        return new TableForm(
                new LinkedHashSet<>(required), new LinkedHashSet<>(optional), Map.of(), Optional.empty(), false);
    }

    /** The same form for a table with other headings, dates or decimal sign. */
    public TableForm mapped(Map<String, String> theirHeadings, Optional<DateTimeFormatter> dates, boolean comma) {
        Map<String, String> lower = new TreeMap<>();
        theirHeadings.forEach((theirs, ours) -> lower.put(heading(theirs), heading(ours)));
        return new TableForm(required, optional, lower, dates, comma);
    }

    boolean knows(String column) {
        return required.contains(column) || optional.contains(column);
    }

    String ours(String theirs) {
        String lower = heading(theirs);
        return headings.getOrDefault(lower, lower);
    }

    private static String heading(String text) {
        return text.strip().toLowerCase(Locale.ROOT);
    }
}
