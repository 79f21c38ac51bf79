package levelback.player.shell;

import java.text.MessageFormat;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.ResourceBundle;

/** The shell's words on screen. */
final class Words {
    private static final ResourceBundle BUNDLE = ResourceBundle.getBundle("levelback.player.app.Shell");

    private Words() {}

    static String of(String key) {
        return BUNDLE.getString(key);
    }

    static String of(String key, Object... values) {
        return new MessageFormat(BUNDLE.getString(key), Locale.getDefault()).format(values);
    }

    /** As {@code Tue 14 Apr 2026}, in the user's language. */
    static String day(LocalDate date) {
        return DateTimeFormatter.ofPattern("EEE d MMM yyyy").format(date);
    }

    static String time(LocalTime time) {
        return DateTimeFormatter.ofPattern("HH:mm").format(time);
    }
}
