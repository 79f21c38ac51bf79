package levelback.player.score;

import java.text.NumberFormat;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleConsumer;
import javafx.geometry.Insets;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import levelback.player.score.ScoreReader.PassSheet;
import levelback.player.theme.ScoreTile;
import levelback.player.theme.Style;
import levelback.scoring.scale.GaitScale;
import levelback.scoring.scale.ScaleLevel;
import org.jspecify.annotations.Nullable;

/** One key for each level of the herd's scale, with what the level means; below them the history, once it is open. */
final class ScoreKeys extends VBox {

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM");

    private final DoubleConsumer give;
    private final Label scaleName = Parts.label("", Style.SMALL, Style.SECOND);
    private final VBox keys = new VBox(6);
    private final HBox history = new HBox(8);
    private final List<Button> byLevel = new ArrayList<>();
    private @Nullable GaitScale scale;
    private @Nullable PassSheet shown;
    private boolean low;

    ScoreKeys(DoubleConsumer give) {
        super(8);
        this.give = give;
        Label title = Parts.label(Words.of("score.head"), Style.HEAD);
        title.setMinWidth(javafx.scene.layout.Region.USE_PREF_SIZE);
        HBox head = new HBox(8, title, scaleName);
        head.setAlignment(Pos.BASELINE_LEFT);
        history.setAlignment(Pos.CENTER_LEFT);
        history.setMinHeight(40);
        history.setId("score-history");
        getChildren().addAll(head, keys, Parts.rule(), history, Parts.rule());
    }

    void setLow(boolean isLow) {
        if (low != isLow) {
            low = isLow;
            setSpacing(low ? 5 : 8);
            keys.setSpacing(low ? 4 : 6);
            history.setMinHeight(low ? 32 : 40);
            GaitScale now = scale;
            PassSheet sheet = shown;
            scale = null;
            if (now != null && sheet != null) {
                show(now, sheet);
            }
        }
    }

    void show(GaitScale of, PassSheet sheet) {
        shown = sheet;
        build(of);
        OptionalDouble mine =
                sheet.mine().map(s -> OptionalDouble.of(s.level())).orElse(OptionalDouble.empty());
        for (int i = 0; i < byLevel.size(); i++) {
            double level = of.levels().get(i).value();
            Parts.choose(byLevel.get(i), mine.isPresent() && mine.getAsDouble() == level);
        }
        history.getChildren().clear();
        if (sheet.cannotScore().isPresent() && sheet.mine().isEmpty()) {
            Label cannot = Parts.label(Words.of("cannot.is", sheet.cannotScore().get()));
            cannot.setWrapText(true);
            history.getChildren().add(cannot);
        } else if (!sheet.open()) {
            history.getChildren()
                    .add(Parts.label(
                            Words.of(mine.isPresent() ? "history.soon" : "history.shut"), Style.SMALL, Style.SECOND));
        } else {
            history.getChildren().add(Parts.label(Words.of("history.open"), Style.SMALL, Style.SECOND));
            history.getChildren().add(Parts.space());
            for (ScoreReader.EarlierScore earlier : sheet.earlier()) {
                Label day = Parts.label(earlier.today() ? Words.of("today") : DAY.format(earlier.date()), Style.HINT);
                // In a narrow window the heading gives way, never a day.
                day.setMinWidth(Region.USE_PREF_SIZE);
                VBox one = new VBox(
                        1, new ScoreTile(earlier.scale().orElse(of), OptionalDouble.of(earlier.level()), 20), day);
                one.setAlignment(Pos.BOTTOM_CENTER);
                one.setMinWidth(Region.USE_PREF_SIZE);
                history.getChildren().add(one);
            }
            if (sheet.mine().map(s -> s.seenBeforeChanging()).orElse(false)) {
                history.getChildren().add(Parts.label(Words.of("seen"), Style.HINT));
            }
        }
    }

    private void build(GaitScale of) {
        if (of.equals(scale)) {
            return;
        }
        scale = of;
        scaleName.setText(of.name());
        keys.getChildren().clear();
        byLevel.clear();
        boolean many = of.levels().size() > 5;
        double high = many ? (low ? 24 : 32) : of.levels().size() == 5 ? (low ? 38 : 50) : (low ? 45 : 64);
        NumberFormat number = NumberFormat.getNumberInstance();
        for (ScaleLevel level : of.levels()) {
            Label text = Parts.plain(level.text());
            text.setStyle(low ? "-fx-font-size: 12px;" : "");
            text.setWrapText(true);
            text.setMinWidth(0);
            text.setMaxWidth(Double.MAX_VALUE);
            HBox.setHgrow(text, Priority.ALWAYS);
            boolean whole = level.value() == Math.rint(level.value());
            Label cap =
                    Parts.cap(whole ? number.format(level.value()) : number.format(Math.floor(level.value())) + " .");
            double tile = many ? (low ? 18 : 22) : low ? 28 : 34;
            HBox box = new HBox(low ? 8 : 12, new ScoreTile(of, OptionalDouble.of(level.value()), tile), text, cap);
            box.setAlignment(Pos.CENTER_LEFT);
            Button key = Parts.key("", "", () -> give.accept(level.value()));
            key.setGraphic(box);
            key.setPadding(new Insets(2, 10, 2, 12));
            key.setStyle((low ? "-fx-padding: 1 6 1 8;" : "-fx-padding: 1 10 1 12;") + "-fx-min-height: " + high + ";");
            key.setMinHeight(high);
            key.setPrefHeight(high);
            key.setMaxWidth(Double.MAX_VALUE);
            key.setMinWidth(0);
            box.prefWidthProperty().bind(key.widthProperty().subtract(low ? 16 : 24));
            box.setMinWidth(0);
            key.setAccessibleText(Words.of("score.accessible", Words.level(level.value()), level.text()));
            key.setId("score-level-" + Words.level(level.value()));
            byLevel.add(key);
            keys.getChildren().add(key);
        }
    }
}
