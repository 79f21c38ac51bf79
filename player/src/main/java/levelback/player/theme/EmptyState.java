package levelback.player.theme;

import javafx.scene.control.ButtonBase;
import javafx.scene.control.Label;
import javafx.scene.layout.VBox;

/** A page or part with nothing in it yet: what is missing, and the one key that mends it. */
public final class EmptyState extends VBox {

    /**
     * @param missing what is missing, a sentence
     * @param how how to mend it, a sentence
     * @param keys the key, made by {@link Keys#main}; more only where there is a real choice
     */
    public EmptyState(String missing, String how, ButtonBase... keys) {
        getStyleClass().add("lb-empty");
        Label first = new Label(missing);
        first.getStyleClass().add("lb-empty-head");
        first.setWrapText(true);
        getChildren().add(first);
        if (!how.isEmpty()) {
            Label second = new Label(how);
            second.setWrapText(true);
            getChildren().add(second);
        }
        getChildren().addAll(keys);
    }
}
