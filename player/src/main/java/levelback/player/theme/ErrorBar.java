package levelback.player.theme;

import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Hyperlink;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.text.Text;
import javafx.scene.text.TextFlow;

/** An error: one sentence that says what, where and what now, with a bar at the left and a leading cross. */
public final class ErrorBar extends HBox {

    private final TextFlow words;

    public ErrorBar(String sentence) {
        getStyleClass().add("lb-error");
        setAlignment(Pos.CENTER_LEFT);
        Text text = new Text("× " + sentence + " ");
        text.getStyleClass().add("lb-error-text");
        words = new TextFlow(text);
        words.setMaxHeight(USE_PREF_SIZE);
        HBox.setHgrow(words, Priority.ALWAYS);
        getChildren().add(words);
        setAccessibleText("Error: " + sentence);
    }

    /** Adds what can be done about it. */
    public ErrorBar withLink(String text, Runnable action) {
        Hyperlink link = new Hyperlink(text);
        link.setOnAction(e -> action.run());
        words.getChildren().add(link);
        return this;
    }

    /** Adds a key that closes it. */
    public ErrorBar onClose(String text, Runnable action) {
        Button close = Keys.button(text, "");
        close.setOnAction(e -> action.run());
        getChildren().add(close);
        return this;
    }
}
