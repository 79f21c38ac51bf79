package levelback.player.theme;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import levelback.scoring.scale.GaitScale;
import levelback.scoring.scale.ScaleLevel;
import levelback.scoring.value.Estimate;
import levelback.scoring.value.Interval;
import levelback.scoring.value.Leg;

/** Every part of the desk on one page, to be looked at in light and in dark. */
public final class Sampler extends VBox {

    public Sampler() {
        super(10);
        getStyleClass().add(Style.SHEET);
        setStyle("-fx-padding: 24;");
        GaitScale four = scale(0, 3);
        GaitScale five = scale(1, 5);
        HBox tiles = row();
        four.levels().forEach(level -> tiles.getChildren().add(tile(four, level.value())));
        five.levels().forEach(level -> tiles.getChildren().add(tile(five, level.value())));
        tiles.getChildren().addAll(tile(five, 2.5), new ScoreTile(four, OptionalDouble.empty(), 32));
        HBox legs = row();
        for (Leg leg : Leg.values()) {
            legs.getChildren().add(new LegChip(leg));
        }
        legs.getChildren()
                .addAll(
                        new FourFeet(Optional.of(Leg.RH), Optional.of(Leg.LH), 30),
                        new Label("first foot filled, next ringed"),
                        new LevelLine(
                                four,
                                List.of(
                                        OptionalDouble.of(0),
                                        OptionalDouble.of(1),
                                        OptionalDouble.of(1),
                                        OptionalDouble.of(2),
                                        OptionalDouble.of(3))));
        IntervalBar bar = new IntervalBar(0, 1);
        bar.setPrefWidth(150);
        bar.show(Estimate.of(.62, .50, .76, 88, "sample"));
        IntervalBar own = new IntervalBar(0, 1);
        own.setPrefWidth(150);
        own.show(Estimate.pointOnly(.36, 9, "sample", "one stride"));
        own.ownRange(new Interval(.55, .7));
        IntervalBar weak = new IntervalBar(0, 1);
        weak.setPrefWidth(150);
        weak.show(Estimate.of(.4, .1, .8, 3, "sample"));
        weak.supported(false);
        ToggleButton down = Keys.toggle("Loop stride", "L");
        down.setSelected(true);
        Button off = Keys.button("not now", "");
        off.setDisable(true);
        ProgressBar progress = new ProgressBar(.42);
        progress.setPrefWidth(150);
        TextField field = new TextField();
        field.setPromptText("Type her number");
        Label chosen = new Label("412");
        chosen.getStyleClass().add(Style.COW);
        HBox chosenRow = new HBox(chosen, new Label("chosen row"));
        chosenRow.getStyleClass().addAll(Style.ROW, Style.CHOSEN);
        HBox plainRow = new HBox(new Label("338"), new Label("row"));
        plainRow.getStyleClass().add(Style.ROW);
        getChildren()
                .addAll(
                        text("Parts", Style.PAGE_HEAD),
                        text("Score tile: the top edge is her back", Style.HEAD),
                        tiles,
                        text("Leg chip: the square corner is her foot, from above", Style.HEAD),
                        legs,
                        text("Interval bar", Style.HEAD),
                        row(bar, new Label(".62 (.50 to .76)"), own, new Label("own range"), weak),
                        text("Keys and fields", Style.HEAD),
                        row(Keys.main("Next pass", "Enter"), Keys.button("Cannot score…", "U"), down, off, field),
                        text("Rows", Style.HEAD),
                        chosenRow,
                        plainRow,
                        text("Messages", Style.HEAD),
                        new Caution("Milk withheld until Thu 16 Apr, 05:00", ", typed by the vet"),
                        new ErrorBar("exit-2.mp4 is broken after 06:51. 31 passes before it can be used.")
                                .withLink("Show the last good frame", () -> {})
                                .onClose("Close", () -> {}),
                        new Note("2000 of 2000 resamples."),
                        row(new Label("Writing clip"), progress, new Label("42 %, 8 s left"), Keys.button("Stop", "")),
                        text("Empty", Style.HEAD),
                        new EmptyState(
                                "No recordings yet.",
                                "Drop video files here, or add a folder from the camera.",
                                Keys.main("Add recordings…", "Ctrl O")));
    }

    private static ScoreTile tile(GaitScale scale, double level) {
        return new ScoreTile(scale, OptionalDouble.of(level), 32);
    }

    private static Label text(String words, String style) {
        Label label = new Label(words);
        label.getStyleClass().add(style);
        return label;
    }

    private static HBox row(Node... nodes) {
        HBox row = new HBox(10, nodes);
        row.setAlignment(Pos.CENTER_LEFT);
        return row;
    }

    private static GaitScale scale(int low, int high) {
        List<ScaleLevel> levels = java.util.stream.IntStream.rangeClosed(low, high)
                .mapToObj(level -> new ScaleLevel(level, ""))
                .toList();
        return new GaitScale("sample", "sample", "none", levels, low + 2, high, 0.5);
    }
}
