package levelback.player.score;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.ResourceBundle;

/** The words of the Score page, all in one bundle. */
final class Words {

    private static final ResourceBundle BUNDLE = ResourceBundle.getBundle("levelback.player.score.Score");

    private Words() {}

    /** A text with its places filled in. */
    static String of(String key, Object... filled) {
        String text = BUNDLE.getString(key);
        return filled.length == 0 ? text : new MessageFormat(text, Locale.getDefault()).format(filled);
    }

    /** A level as it is written down: {@code 3} or {@code 2.5}. */
    static String level(double level) {
        return level == Math.rint(level) ? Long.toString((long) level) : Double.toString(level);
    }
}
