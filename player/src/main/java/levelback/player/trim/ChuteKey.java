package levelback.player.trim;

import javafx.geometry.Insets;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ContentDisplay;
import javafx.scene.control.Label;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.scene.text.TextAlignment;
import levelback.player.theme.KeyCap;
import levelback.player.theme.Style;

/** A key of chute mode: at least 20 mm each way on the measured screen, acts when it is let go, no hover, no long press. */
final class ChuteKey extends Button {

    ChuteKey(double minPx, String text, String small, String keyCap, Runnable action) {
        getStyleClass().addAll(Style.KEY, Style.KEY_CHUTE, "trim-chute-key");
        setFocusTraversable(false);
        // In a style of its own: the stylesheet's key height would win over a height set by code.
        setStyle("-fx-min-width: " + minPx + "px; -fx-min-height: " + minPx + "px;");
        setMaxSize(Double.MAX_VALUE, Double.MAX_VALUE);
        Label first = CowColumn.styled(new Label(text), "trim-chute-first");
        first.setWrapText(true);
        first.setTextAlignment(TextAlignment.CENTER);
        VBox words = text.isEmpty() ? new VBox(2) : new VBox(2, first);
        words.setAlignment(Pos.CENTER);
        words.setMinSize(0, 0);
        if (!small.isEmpty()) {
            Label second = CowColumn.styled(new Label(small), "trim-chute-second");
            second.setWrapText(true);
            second.setTextAlignment(TextAlignment.CENTER);
            words.getChildren().add(second);
        }
        StackPane face = new StackPane(words);
        if (!keyCap.isEmpty()) {
            KeyCap cap = new KeyCap(keyCap);
            StackPane.setAlignment(cap, Pos.TOP_RIGHT);
            face.getChildren().add(cap);
            if (keyCap.length() > 1) {
                // A wide cap reaches over the middle of the key: the words begin below it.
                words.setPadding(new Insets(14, 0, 0, 0));
            }
        }
        face.prefWidthProperty().bind(widthProperty().subtract(12));
        face.prefHeightProperty().bind(heightProperty().subtract(10));
        setGraphic(face);
        setContentDisplay(ContentDisplay.GRAPHIC_ONLY);
        setAccessibleText(small.isEmpty() ? text : text + ", " + small);
        setOnAction(e -> action.run());
        this.words = words;
    }

    private final VBox words;

    /** Puts a picture over the words. */
    ChuteKey with(Node over) {
        words.getChildren().add(0, over);
        return this;
    }

    ChuteKey named(String id) {
        setId(id);
        return this;
    }

    ChuteKey styled(String styleClass) {
        getStyleClass().add(styleClass);
        return this;
    }

    /** A key that is down: black with light words. */
    ChuteKey down(boolean is) {
        if (is) {
            getStyleClass().add("trim-chute-down");
        }
        return this;
    }
}
