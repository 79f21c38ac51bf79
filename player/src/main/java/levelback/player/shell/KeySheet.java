package levelback.player.shell;

import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import levelback.player.theme.KeyCap;
import levelback.player.theme.Style;

/** The keys that work everywhere (F12); a page shows its own beside what they do. */
final class KeySheet extends Sheet {

    private static final String[][] EVERYWHERE = {
        {"pages", "F1", "F8"},
        {"find", "Ctrl F"},
        {"undo", "Ctrl Z"},
        {"redo", "Ctrl Shift Z"},
        {"recordings", "Ctrl O"},
        {"cows", "Ctrl I"},
        {"chute", "F9"},
        {"theme", "F10"},
        {"full", "F11"},
        {"sheet", "F12"},
        {"region", "Ctrl Tab"},
        {"esc", "Esc"},
    };

    KeySheet() {
        super(Words.of("keys.title"), "", true);
        Label head = new Label(Words.of("keys.everywhere"));
        head.getStyleClass().add(Style.HEAD);
        getChildren().add(head);
        for (String[] line : EVERYWHERE) {
            HBox caps = new HBox(4);
            caps.setPrefWidth(130);
            caps.setMinWidth(130);
            for (int i = 1; i < line.length; i++) {
                caps.getChildren().add(new KeyCap(line[i]));
            }
            caps.setAlignment(Pos.CENTER_LEFT);
            HBox row = new HBox(10, caps, new Label(Words.of("keys." + line[0])));
            row.setAlignment(Pos.CENTER_LEFT);
            getChildren().add(row);
        }
    }
}
