package levelback.player.theme;

import javafx.scene.text.Text;
import javafx.scene.text.TextFlow;

/** A quiet note on a green wash: how a figure was made, what was done. */
public final class Note extends TextFlow {
    public Note(String text) {
        getStyleClass().add("lb-note");
        Text words = new Text(text);
        words.getStyleClass().add("lb-ink-text");
        getChildren().add(words);
        setAccessibleText(text);
    }
}
