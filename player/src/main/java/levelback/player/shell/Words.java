package levelback.player.shell;

import java.text.MessageFormat;
import java.time.LocalDate;
import java.time.LocalDateTime;
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

    /** As {@code 10:41} today, as {@code Wed 09:05} in the last week, with the date before that. */
    static String moment(LocalDateTime at, LocalDate today) {
        String pattern = at.toLocalDate().equals(today)
                ? "HH:mm"
                : at.toLocalDate().isAfter(today.minusDays(6)) ? "EEE HH:mm" : "d MMM yyyy";
        return DateTimeFormatter.ofPattern(pattern).format(at);
    }
}
