package levelback.player.report;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.ResourceBundle;
import levelback.scoring.value.Estimate;

/** The words of a report, and how its figures and days are written. */
public final class ReportWords {
    private final ResourceBundle bundle;
    private final Locale locale;

    /** Words in the language of a locale, English where there is none. */
    public ReportWords(Locale locale) {
        this.bundle = ResourceBundle.getBundle(
                "levelback.player.report.Report",
                locale,
                ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
        // Days are written in the language of the words, not in a mixture of two.
        this.locale = bundle.getLocale().getLanguage().isEmpty() ? Locale.UK : bundle.getLocale();
    }

    /** The words under a key, with its places filled. */
    public String say(String key, Object... places) {
        String pattern = bundle.getString(key);
        return places.length == 0 ? pattern : String.format(locale, pattern, places);
    }

    /** {@code Tuesday 14 April 2026}. */
    String longDay(LocalDate day) {
        return DateTimeFormatter.ofPattern("EEEE d MMMM yyyy", locale).format(day);
    }

    /** {@code 14 April}. */
    public String day(LocalDate day) {
        return DateTimeFormatter.ofPattern("d MMMM", locale).format(day);
    }

    /** {@code 14 Apr}. */
    public String shortDay(LocalDate day) {
        return DateTimeFormatter.ofPattern("d MMM", locale).format(day);
    }

    /** {@code 14 Apr 2026}. */
    String dayOfYear(LocalDate day) {
        return DateTimeFormatter.ofPattern("d MMM yyyy", locale).format(day);
    }

    /** {@code 18.6 %}. */
    String percent(double share) {
        return String.format(locale, "%.1f\u00a0%%", 100 * share);
    }

    /** {@code 13.6 to 25.0}, or why there is none. */
    String percentInterval(Estimate estimate) {
        return estimate.interval()
                .map(i -> say(
                        "to",
                        String.format(locale, "%.1f", 100 * i.low()),
                        String.format(locale, "%.1f", 100 * i.high())))
                .orElseGet(() -> estimate.why().orElse(""));
    }

    /** A proportion as in a table: {@code .62}, {@code 1.00}. */
    public String proportion(double value) {
        String text = String.format(Locale.ROOT, "%.2f", value);
        return text.startsWith("0.") ? text.substring(1) : text;
    }

    /** {@code .50 to .76}, or empty text. */
    String proportionInterval(Estimate estimate) {
        return estimate.interval()
                .map(i -> say("to", proportion(i.low()), proportion(i.high())))
                .orElse("");
    }

    /** Text made safe for XML. */
    static String xml(String text) {
        StringBuilder safe = new StringBuilder(text.length());
        text.codePoints().forEach(c -> {
            switch (c) {
                case '&' -> safe.append("&amp;");
                case '<' -> safe.append("&lt;");
                case '>' -> safe.append("&gt;");
                case '"' -> safe.append("&quot;");
                default -> {
                    boolean legal = c == 0x9
                            || c == 0xA
                            || c == 0xD
                            || (c >= 0x20 && c <= 0xD7FF)
                            || (c >= 0xE000 && c <= 0xFFFD)
                            || c >= 0x10000;
                    safe.appendCodePoint(legal ? c : 0xFFFD);
                }
            }
        });
        return safe.toString();
    }
}
