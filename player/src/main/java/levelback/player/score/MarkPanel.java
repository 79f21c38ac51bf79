package levelback.player.score;

import java.util.OptionalInt;
import java.util.function.IntConsumer;
import java.util.function.IntSupplier;
import javafx.application.Platform;
import javafx.geometry.Insets;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import levelback.player.theme.Style;
import levelback.store.lane.Pass;

/** The right column while passes are marked: three steps, the one in force in bold, and the passes marked so far. */
final class MarkPanel extends VBox {

    private final Label[] steps = new Label[3];
    private final TextField number = new TextField();
    private final HBox numberBox;
    private final VBox passes = new VBox();
    private final IntConsumer goTo;
    private boolean asked;

    MarkPanel(ScoreViewModel model, IntSupplier frame, IntConsumer goTo) {
        super(10);
        this.goTo = goTo;
        getStyleClass().addAll(Style.SHEET, Style.LEFT_RULE);
        setPadding(new Insets(10, 14, 10, 14));
        Label how = Parts.label(Words.of("mark.how"), Style.SMALL, Style.SECOND);
        how.setWrapText(true);
        getChildren().addAll(Parts.label(Words.of("mark.head"), Style.HEAD), how);
        for (int i = 0; i < steps.length; i++) {
            Label step = new Label();
            step.setWrapText(true);
            steps[i] = step;
        }
        Button first = Parts.key(Words.of("mark.first"), "[", () -> model.markFirst(frame.getAsInt()));
        first.setId("score-mark-first");
        Button last = Parts.key(Words.of("mark.last"), "]", () -> model.markLast(frame.getAsInt()));
        last.setId("score-mark-last");
        number.setPromptText(Words.of("mark.number"));
        number.setId("score-number");
        number.setOnAction(e -> take(model));
        number.addEventFilter(javafx.scene.input.KeyEvent.KEY_PRESSED, e -> {
            if (e.getCode() == KeyCode.ESCAPE) {
                number.clear();
                model.ask(false);
                e.consume();
            }
        });
        HBox.setHgrow(number, Priority.ALWAYS);
        numberBox = new HBox(8, number, Parts.key(Words.of("mark.take"), Words.of("cap.enter"), () -> take(model)));
        Region fill = new Region();
        ScrollPane scroll = new ScrollPane(passes);
        scroll.setFitToWidth(true);
        scroll.setFocusTraversable(false);
        VBox.setVgrow(scroll, Priority.ALWAYS);
        fill.setMinHeight(4);
        HBox foot = new HBox(Parts.space(), Parts.mainKey(Words.of("mark.score"), Words.of("cap.enter"), model::next));
        foot.setMinHeight(Region.USE_PREF_SIZE);
        getChildren()
                .addAll(
                        steps[0],
                        first,
                        steps[1],
                        last,
                        steps[2],
                        numberBox,
                        fill,
                        Parts.label(Words.of("mark.done"), Style.HEAD),
                        scroll,
                        foot);
    }

    private void take(ScoreViewModel model) {
        String typed = number.getText();
        number.clear();
        asked = false;
        model.number(typed);
    }

    void show(ScoreViewModel.State.Marking m) {
        boolean hasFirst = m.first().isPresent();
        boolean hasLast = m.last().isPresent();
        step(0, Words.of("mark.step1"), m.first(), !hasFirst);
        step(1, Words.of("mark.step2"), m.last(), hasFirst && !hasLast);
        step(2, Words.of("mark.step3"), OptionalInt.empty(), hasLast);
        number.setDisable(!hasLast);
        numberBox.setDisable(!hasLast);
        if (hasLast && !asked) {
            Platform.runLater(number::requestFocus);
        }
        asked = hasLast;
        passes.getChildren().clear();
        int ordinal = 1;
        for (Pass pass : m.sheet().passes()) {
            String name = m.sheet().numbers().containsKey(pass.id())
                    ? String.valueOf(m.sheet().numbers().get(pass.id()))
                    : Words.of("queue.unknown");
            Label who = Parts.label(name, Style.COW);
            Label span = Parts.label(
                    Words.of("mark.span", Integer.toString(pass.fromFrame()), Integer.toString(pass.toFrame())),
                    Style.SMALL,
                    Style.OPENS);
            HBox row = new HBox(
                    8, Parts.label(Integer.toString(ordinal++), Style.SMALL, Style.THIRD), who, Parts.space(), span);
            row.getStyleClass().add(Style.ROW);
            row.setAlignment(Pos.CENTER_LEFT);
            row.setOnMouseClicked(e -> goTo.accept(pass.fromFrame()));
            passes.getChildren().add(row);
        }
        if (m.sheet().passes().isEmpty()) {
            passes.getChildren().add(Parts.label(Words.of("mark.none"), Style.SMALL, Style.SECOND));
        }
    }

    private void step(int at, String text, OptionalInt frame, boolean inForce) {
        Label step = steps[at];
        step.setText((at + 1) + "  " + text
                + (frame.isPresent() ? "  " + Words.of("mark.at", Integer.toString(frame.getAsInt())) : ""));
        step.getStyleClass().removeAll(Style.STRONG, Style.THIRD);
        step.getStyleClass().add(inForce ? Style.STRONG : Style.THIRD);
    }
}
