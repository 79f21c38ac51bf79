package levelback.player.score;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import levelback.player.theme.LegChip;
import levelback.player.theme.Style;
import levelback.scoring.scale.Sign;
import levelback.scoring.value.Leg;
import levelback.store.herd.Tag;

/** The eight signs: leg key first, then sign key. A key shows the legs it was tagged on, or how often. */
final class SignKeys extends VBox {

    private final Map<Sign, Button> keys = new EnumMap<>(Sign.class);
    private final Map<Sign, HBox> legs = new EnumMap<>(Sign.class);
    private final GridPane grid = new GridPane();

    SignKeys(KeySet keySet, Consumer<Sign> tag) {
        super(8);
        HBox head = new HBox(
                8,
                Parts.label(Words.of("signs.head"), Style.HEAD),
                Parts.label(Words.of("signs.hint"), Style.SMALL, Style.SECOND));
        head.setAlignment(Pos.BASELINE_LEFT);
        grid.setHgap(4);
        ColumnConstraints half = new ColumnConstraints();
        half.setPercentWidth(50);
        grid.getColumnConstraints().addAll(half, half);
        int at = 0;
        for (Sign sign : ScoreViewModel.signs()) {
            HBox chips = new HBox(2);
            chips.setAlignment(Pos.CENTER_RIGHT);
            Label text = Parts.plain(Words.of("sign." + sign.key()));
            text.setMinWidth(0);
            chips.setMinWidth(javafx.scene.layout.Region.USE_PREF_SIZE);
            HBox box = new HBox(4, Parts.cap(keySet.cap(sign)), text, Parts.space(), chips);
            box.setAlignment(Pos.CENTER_LEFT);
            box.setMinWidth(0);
            Button key = Parts.key("", "", () -> tag.accept(sign));
            key.setGraphic(box);
            key.setStyle("-fx-padding: 3 5 3 5;");
            key.setMaxWidth(Double.MAX_VALUE);
            key.setMinWidth(0);
            box.prefWidthProperty().bind(key.widthProperty().subtract(10));
            key.setId("score-sign-" + sign.key());
            keys.put(sign, key);
            legs.put(sign, chips);
            grid.add(key, at % 2, at / 2);
            at++;
        }
        setLow(false);
        getChildren().addAll(head, grid);
    }

    void setLow(boolean low) {
        setSpacing(low ? 5 : 8);
        grid.setVgap(low ? 3 : 4);
        keys.values()
                .forEach(key -> key.setStyle((low ? "-fx-font-size: 12px;" : "")
                        + "-fx-padding: 2 4 2 4; -fx-min-height: " + (low ? 27 : 32) + ";"));
    }

    void show(List<Tag> tags) {
        keys.forEach((sign, key) -> {
            List<Tag> own = tags.stream()
                    .filter(tag -> tag.kind() == Tag.Kind.SIGN && tag.key().equals(sign.key()))
                    .toList();
            Parts.choose(key, !own.isEmpty());
            HBox chips = legs.get(sign);
            if (chips == null) {
                return;
            }
            chips.getChildren().clear();
            List<Leg> on = own.stream()
                    .map(Tag::leg)
                    .flatMap(Optional::stream)
                    .distinct()
                    .sorted()
                    .toList();
            if (on.isEmpty() && !own.isEmpty()) {
                chips.getChildren().add(Parts.label(Integer.toString(own.size()), Style.STRONG));
            }
            // Two chips fit; three legs with one sign are told by their number and on the strip.
            if (on.size() <= 2) {
                on.forEach(leg -> chips.getChildren().add(new LegChip(leg)));
            } else {
                chips.getChildren().add(Parts.label(Words.of("signs.legs", on.size()), Style.STRONG));
            }
            key.setAccessibleText(Words.of("sign." + sign.key())
                    + (own.isEmpty() ? "" : ", " + Words.of("signs.tagged", own.size())));
        });
    }
}
