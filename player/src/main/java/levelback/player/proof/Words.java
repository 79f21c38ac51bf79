package levelback.player.proof;

import java.text.MessageFormat;
import java.text.NumberFormat;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.ResourceBundle;
import levelback.scoring.value.Estimate;

/** The words and numbers of the Proof page. */
final class Words {

    private static final ResourceBundle BUNDLE = ResourceBundle.getBundle("levelback.player.proof.Proof");

    private Words() {}

    /** A text with its places filled in. */
    static String of(String key, Object... filled) {
        String text = BUNDLE.getString(key);
        return filled.length == 0 ? text : new MessageFormat(text, Locale.getDefault()).format(filled);
    }

    /** A level as it is written down. */
    static String level(double level) {
        NumberFormat format = NumberFormat.getNumberInstance();
        format.setMaximumFractionDigits(1);
        return format.format(level);
    }

    /** A share as {@code .62}, two decimals, no leading zero. */
    static String share(double share) {
        String text = String.format(Locale.getDefault(), "%.2f", share);
        return text.startsWith("0") ? text.substring(1) : text;
    }

    /** A share, or a dash where there is none. */
    static String share(OptionalDouble share) {
        return share.isPresent() ? share(share.getAsDouble()) : "–";
    }

    /** {@code .50 to .76}, or empty text. */
    static String interval(Estimate estimate) {
        return estimate.interval()
                .map(i -> of("interval", share(i.low()), share(i.high())))
                .orElse("");
    }

    static String count(long n) {
        return NumberFormat.getIntegerInstance().format(n);
    }

    static String day(LocalDate day) {
        return DateTimeFormatter.ofPattern("EEE d MMM uuuu", Locale.getDefault())
                .format(day);
    }
}
