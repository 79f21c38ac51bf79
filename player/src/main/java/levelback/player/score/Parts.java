package levelback.player.score;

import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import levelback.player.theme.KeyCap;
import levelback.player.theme.Keys;

/** Small pieces that the page's columns share. */
final class Parts {

    private Parts() {}

    static Label label(String text, String... styles) {
        Label label = new Label(text);
        label.getStyleClass().addAll(styles);
        return label;
    }

    /** A key cap that keeps its width in a tight key. */
    static KeyCap cap(String key) {
        KeyCap cap = new KeyCap(key);
        cap.setStyle("-fx-min-width: " + (key.length() > 1 ? 32 : 22) + ";");
        return cap;
    }

    /** Words on a key that are read, not shouted. */
    static Label plain(String text) {
        return label(text, "lb-plain");
    }

    static Region space() {
        Region space = new Region();
        HBox.setHgrow(space, Priority.ALWAYS);
        return space;
    }

    static Region rule() {
        Region rule = new Region();
        rule.getStyleClass().add(levelback.player.theme.Style.RULE);
        return rule;
    }

    /** A key that does something and leaves the keyboard to the picture: each has a key of its own. */
    static Button key(String text, String cap, Runnable does) {
        return quiet(Keys.button(text, cap), does);
    }

    /** The page's one next thing. */
    static Button mainKey(String text, String cap, Runnable does) {
        return quiet(Keys.main(text, cap), does);
    }

    static <B extends ButtonBase> B quiet(B button, Runnable does) {
        button.setFocusTraversable(false);
        button.setOnAction(e -> does.run());
        return button;
    }

    static void choose(Node node, boolean chosen) {
        boolean has = node.getStyleClass().contains(levelback.player.theme.Style.CHOSEN);
        if (chosen && !has) {
            node.getStyleClass().add(levelback.player.theme.Style.CHOSEN);
        } else if (!chosen) {
            node.getStyleClass().remove(levelback.player.theme.Style.CHOSEN);
        }
    }
}
