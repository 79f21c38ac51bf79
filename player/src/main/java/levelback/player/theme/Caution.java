package levelback.player.theme;

import javafx.scene.text.Text;
import javafx.scene.text.TextFlow;

/** A caution: yellow ground, a leading exclamation mark. It stands first and cannot be closed. */
public final class Caution extends TextFlow {

    /** A caution that is all of one weight. */
    public Caution(String sentence) {
        this(sentence, "");
    }

    /**
     * @param strong the first words, in bold
     * @param rest what follows them, with its own leading blank or comma
     */
    public Caution(String strong, String rest) {
        getStyleClass().add("lb-caution");
        Text first = new Text("! " + strong);
        first.getStyleClass().addAll("lb-caution-text", "lb-bold");
        Text more = new Text(rest);
        more.getStyleClass().add("lb-caution-text");
        getChildren().addAll(first, more);
        setAccessibleText("Caution: " + strong + rest);
    }
}
