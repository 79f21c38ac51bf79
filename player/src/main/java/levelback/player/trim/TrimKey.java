package levelback.player.trim;

import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ContentDisplay;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import levelback.player.theme.KeyCap;
import levelback.player.theme.Style;

/**
 * A key of the Trim page: at least 44 px high, words over words, acts when it is let go. It does not take the keyboard, so
 * that Enter after a touch still means what the page says.
 */
final class TrimKey extends Button {

    static final double MIN_PX = 44;

    private final Label first = new Label();
    private final Label second = new Label();
    private final VBox words = new VBox(first, second);
    private final HBox row = new HBox(8, words);

    TrimKey(String text, String small, String keyCap, Runnable action) {
        getStyleClass().addAll(Style.KEY, Style.KEY_TRIM, "trim-key");
        setFocusTraversable(false);
        setMinSize(MIN_PX, MIN_PX);
        setMaxWidth(Double.MAX_VALUE);
        first.getStyleClass().add("trim-key-first");
        second.getStyleClass().add("trim-key-second");
        first.setMinWidth(0);
        first.setWrapText(true);
        first.setTextAlignment(javafx.scene.text.TextAlignment.CENTER);
        second.setWrapText(true);
        second.setMinWidth(0);
        second.setTextAlignment(javafx.scene.text.TextAlignment.CENTER);
        words.setAlignment(Pos.CENTER);
        row.setAlignment(Pos.CENTER);
        if (!keyCap.isEmpty()) {
            row.getChildren().add(new KeyCap(keyCap));
        }
        setGraphic(row);
        setContentDisplay(ContentDisplay.GRAPHIC_ONLY);
        setOnAction(e -> action.run());
        say(text, small);
    }

    TrimKey(String text, Runnable action) {
        this(text, "", "", action);
    }

    /** Changes the words. */
    void say(String text, String small) {
        first.setText(text);
        second.setText(small);
        second.setVisible(!small.isEmpty());
        second.setManaged(!small.isEmpty());
        setAccessibleText(small.isEmpty() ? text : text + ", " + small);
    }

    /** Puts something before the words: a leg chip, severity bars. */
    TrimKey with(Node before) {
        row.getChildren().add(0, before);
        return this;
    }

    /** Words start at the left. */
    TrimKey left() {
        words.setAlignment(Pos.CENTER_LEFT);
        row.setAlignment(Pos.CENTER_LEFT);
        return this;
    }

    TrimKey styled(String styleClass) {
        getStyleClass().add(styleClass);
        return this;
    }

    void chosen(boolean is) {
        getStyleClass().remove(Style.CHOSEN);
        if (is) {
            getStyleClass().add(Style.CHOSEN);
        }
    }
}
