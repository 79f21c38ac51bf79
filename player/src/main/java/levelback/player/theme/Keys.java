package levelback.player.theme;

import javafx.scene.control.Button;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.ContentDisplay;
import javafx.scene.control.ToggleButton;

/** Makes keys: what they do in words, with the key of the keyboard that does the same. */
public final class Keys {
    private Keys() {}

    /** A key; an empty {@code keyCap} draws none. */
    public static Button button(String text, String keyCap) {
        return dress(new Button(text), text, keyCap);
    }

    /** The one next thing on a page. */
    public static Button main(String text, String keyCap) {
        Button button = button(text, keyCap);
        button.getStyleClass().add(Style.KEY_MAIN);
        return button;
    }

    /** A key that stays down. */
    public static ToggleButton toggle(String text, String keyCap) {
        return dress(new ToggleButton(text), text, keyCap);
    }

    private static <B extends ButtonBase> B dress(B button, String text, String keyCap) {
        button.getStyleClass().add(Style.KEY);
        if (!keyCap.isEmpty()) {
            button.setGraphic(new KeyCap(keyCap));
            button.setContentDisplay(ContentDisplay.RIGHT);
            button.setGraphicTextGap(8);
        }
        button.setMinWidth(javafx.scene.layout.Region.USE_PREF_SIZE);
        button.setAccessibleText(keyCap.isEmpty() ? text : text + ", " + keyCap);
        return button;
    }
}
