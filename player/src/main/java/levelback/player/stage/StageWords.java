package levelback.player.stage;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.ResourceBundle;

/** The words around the picture, all in one bundle. */
final class StageWords {

    private static final ResourceBundle BUNDLE = ResourceBundle.getBundle("levelback.player.stage.Stage");

    private StageWords() {}

    /** A text with its places filled in. */
    static String of(String key, Object... filled) {
        String text = BUNDLE.getString(key);
        return filled.length == 0 ? text : new MessageFormat(text, Locale.getDefault()).format(filled);
    }
}
