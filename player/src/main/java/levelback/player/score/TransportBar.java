package levelback.player.score;

import java.util.LinkedHashMap;
import java.util.Map;
import javafx.geometry.Insets;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import levelback.player.stage.PicturePlayer;
import levelback.player.theme.KeyCap;
import levelback.player.theme.Keys;
import levelback.player.theme.Style;

/** Walk or stand, how fast, one frame on or back, the loop, and where the picture is. */
final class TransportBar extends HBox {

    private static final double[] RATES = {4, 2, 1, 0.5, 0.25, 0.125};

    private final PicturePlayer player;
    private final Button walk;
    private final Map<Double, ToggleButton> rates = new LinkedHashMap<>();
    private final ToggleButton loop;
    private final Label frame = Parts.label("", Style.STRONG);
    private final Label of = new Label();
    private final Label own = Parts.label("", Style.HINT);
    private boolean backwards;

    TransportBar(PicturePlayer player, Runnable toggleLoop) {
        super(8);
        this.player = player;
        setAlignment(Pos.CENTER_LEFT);
        setPadding(new Insets(0, 10, 0, 10));
        setMinHeight(48);
        setPrefHeight(48);
        getStyleClass().addAll(Style.SHEET, Style.BELOW_RULE);
        walk = Parts.quiet(Keys.main(Words.of("walk"), Words.of("cap.space")), this::walkOrStand);
        walk.setId("score-walk");
        HBox segments = new HBox(-1);
        segments.setAlignment(Pos.CENTER_LEFT);
        for (double rate : RATES) {
            ToggleButton key = Parts.quiet(Keys.toggle(Words.of("rate." + rate), ""), () -> setRate(rate));
            key.setStyle("-fx-padding: 4 7 4 7;");
            key.setAccessibleText(Words.of("rate.accessible", Words.of("rate." + rate)));
            rates.put(rate, key);
            segments.getChildren().add(key);
        }
        segments.setMinWidth(Region.USE_PREF_SIZE);
        Button back = Parts.key(Words.of("frame.back"), "←", () -> player.step(-1));
        Button on = Parts.key(Words.of("frame.on"), "→", () -> player.step(1));
        loop = Parts.quiet(Keys.toggle(Words.of("loop"), "L"), toggleLoop);
        HBox where = new HBox(4, frame, of);
        where.setAlignment(Pos.CENTER_RIGHT);
        VBox label = new VBox(where, own);
        label.setAlignment(Pos.CENTER_RIGHT);
        label.setMinWidth(Region.USE_PREF_SIZE);
        frame.setId("score-frame");
        getChildren().addAll(walk, segments, back, on, loop, Parts.space(), label);
        setRate(1);
    }

    void walkOrStand() {
        if (player.isWalking()) {
            player.stand();
        } else {
            player.walk();
        }
        refresh();
    }

    /** Walks backwards, or stands. */
    void backwards() {
        backwards = !backwards;
        setRate(Math.abs(player.rate()));
        if (!player.isWalking()) {
            player.walk();
        }
        refresh();
    }

    void forwards() {
        if (backwards) {
            backwards = false;
            setRate(Math.abs(player.rate()));
        }
    }

    void setRate(double rate) {
        player.setRate(backwards ? -rate : rate);
        rates.forEach((r, key) -> key.setSelected(r == rate));
        refresh();
    }

    /** One step slower (above 0) or faster (below 0). */
    void slower(int steps) {
        for (int i = 0; i < RATES.length; i++) {
            if (RATES[i] == Math.abs(player.rate())) {
                setRate(RATES[Math.max(0, Math.min(RATES.length - 1, i + steps))]);
                return;
            }
        }
    }

    void refresh() {
        walk.setText(Words.of(player.isWalking() ? "stand" : backwards ? "walk.back" : "walk"));
        loop.setSelected(player.loop().isPresent());
    }

    void where(String frameText, String ofText, String ownText) {
        frame.setText(frameText);
        of.setText(ofText);
        own.setText(ownText);
    }

    /** In little room the caps of the frame keys go. */
    void setNarrow(boolean narrow) {
        setSpacing(narrow ? 5 : 8);
        rates.forEach((rate, key) -> {
            key.setManaged(!narrow || rate <= 1);
            key.setVisible(!narrow || rate <= 1);
        });
        getChildren().stream()
                .filter(Button.class::isInstance)
                .map(Button.class::cast)
                .filter(b -> b.getGraphic() instanceof KeyCap)
                .forEach(b -> b.setGraphicTextGap(narrow ? 5 : 8));
    }
}
