package levelback.player.theme;

import javafx.scene.control.Label;

/** The drawing of a key of the keyboard, beside what it does. */
public final class KeyCap extends Label {
    public KeyCap(String key) {
        super(key);
        getStyleClass().add("lb-keycap");
        setMinWidth(USE_PREF_SIZE);
        setMouseTransparent(true);
    }
}
