package levelback.player.trim;

import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import levelback.player.theme.EmptyState;
import levelback.player.theme.Style;

/** Nobody in the chute: type a number or start the list; and what to mind before the first foot is lifted. */
final class EmptyChute extends VBox {

    private final TrimViewModel model;
    private final TrimWords words;
    private final TextField number = new TextField();

    EmptyChute(TrimViewModel model, TrimWords words) {
        this.model = model;
        this.words = words;
        getStyleClass().addAll("trim-empty", Style.SHEET);
        setAlignment(Pos.TOP_CENTER);
        setSpacing(16);
        number.setPromptText(words.text("who.prompt"));
        number.setAccessibleText(words.text("who.prompt"));
        number.setId("trim-empty-number");
        number.getStyleClass().add("trim-field-big");
        number.setOnAction(e -> bringIn());
    }

    private void bringIn() {
        if (number.getText().isBlank()) {
            model.startList();
        } else {
            model.openNumber(number.getText());
            number.clear();
        }
    }

    void type(String digit) {
        number.requestFocus();
        number.appendText(digit);
    }

    TextField number() {
        return number;
    }

    void show(TrimState.Empty now, boolean chute, double keyPx) {
        boolean list = now.list().stream().anyMatch(row -> !row.done());
        long toDo = now.list().stream().filter(row -> !row.done()).count();
        EmptyState empty = new EmptyState(
                words.text(now.herd() ? "empty.nobody" : "empty.noHerd"),
                now.herd()
                        ? words.text(
                                list ? "empty.list" : now.list().isEmpty() ? "empty.noList" : "empty.allDone",
                                toDo,
                                words.day(now.day()))
                        : words.text("empty.noHerdHow"));
        double px = chute ? keyPx : TrimKey.MIN_PX;
        number.setStyle("-fx-min-height: " + px + "px; -fx-font-size: 20px;");
        number.setPrefWidth(260);
        HBox row = new HBox(8);
        row.setAlignment(Pos.CENTER_LEFT);
        if (now.herd()) {
            row.getChildren().add(number);
            if (chute) {
                row.getChildren()
                        .add(new ChuteKey(px, words.text("who.bring"), "", "", this::bringIn).named("trim-bring"));
            } else {
                TrimKey bring = new TrimKey(words.text("who.bring"), this::bringIn);
                bring.setId("trim-bring");
                row.getChildren().add(bring);
            }
        }
        if (list) {
            javafx.scene.control.Button start = chute
                    ? new ChuteKey(px, words.text("empty.start"), "", "Enter", model::startList).styled(Style.KEY_MAIN)
                    : new TrimKey(words.text("empty.start"), "", "Enter", model::startList).styled(Style.KEY_MAIN);
            start.setId("trim-start");
            row.getChildren().add(start);
        }
        row.getChildren().stream()
                .filter(ChuteKey.class::isInstance)
                .map(ChuteKey.class::cast)
                .forEach(k -> k.setPrefWidth(2.4 * px));
        empty.getChildren().add(row);
        if (chute && now.herd()) {
            empty.getChildren().add(pad(px));
        }
        empty.setMaxWidth(760);
        VBox safety = new VBox(6);
        safety.setMaxWidth(760);
        safety.getStyleClass().add("trim-safety");
        safety.getChildren().add(CowColumn.styled(new Label(words.text("safety.head")), Style.HEAD));
        for (String part : new String[] {"chute", "grinder", "hands", "medicine", "vet"}) {
            Label line = new Label(words.text("safety." + part));
            line.setWrapText(true);
            safety.getChildren().add(line);
        }
        getChildren().setAll(empty, safety);
    }

    private GridPane pad(double px) {
        GridPane pad = new GridPane();
        pad.setHgap(px * 3 / 20);
        pad.setVgap(px * 3 / 20);
        String[] digits = {"7", "8", "9", "4", "5", "6", "1", "2", "3", "0"};
        for (int i = 0; i < digits.length; i++) {
            String digit = digits[i];
            ChuteKey key = new ChuteKey(px, digit, "", "", () -> type(digit)).named("trim-pad-" + digit);
            key.setPrefWidth(1.5 * px);
            // Two rows of five: a low screen has no room for four rows of 20 mm.
            pad.add(key, i % 5, i / 5);
        }
        return pad;
    }
}
