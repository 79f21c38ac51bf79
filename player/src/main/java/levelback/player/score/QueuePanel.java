package levelback.player.score;

import java.util.Optional;
import javafx.geometry.Insets;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import levelback.player.score.ScoreReader.Queue;
import levelback.player.score.ScoreReader.QueueRow;
import levelback.player.theme.Keys;
import levelback.player.theme.Style;
import levelback.store.lane.PassId;
import levelback.store.lane.RecordingId;
import org.jspecify.annotations.Nullable;

/** The left column: passes in milking order, then the recordings they come from. Scored passes carry a tick, no score. */
final class QueuePanel extends VBox {

    private final ScoreViewModel model;
    private final Label count = Parts.label("", Style.SMALL, Style.SECOND);
    private final Label head = Parts.label(Words.of("queue.head"), Style.STRONG);
    private final ListView<QueueRow> rows = new ListView<>();
    private final VBox recordings = new VBox();
    private @Nullable PassId current;
    private boolean narrow;

    QueuePanel(ScoreViewModel model, Runnable addRecordings) {
        this.model = model;
        getStyleClass().addAll(Style.SHEET, Style.RIGHT_RULE);
        HBox top = new HBox(8, head, Parts.space(), count);
        top.setAlignment(Pos.CENTER_LEFT);
        top.setPadding(new Insets(0, 12, 0, 12));
        top.setMinHeight(42);
        Region ink = new Region();
        ink.getStyleClass().add(Style.INK_RULE);
        rows.setFocusTraversable(false);
        rows.setCellFactory(list -> new Row());
        rows.setFixedCellSize(30);
        VBox.setVgrow(rows, Priority.ALWAYS);
        var add = Parts.quiet(Keys.button(Words.of("add.recordings"), ""), addRecordings);
        add.getStyleClass().add(Style.KEY_PLAIN);
        add.setMaxWidth(Double.MAX_VALUE);
        add.setMinWidth(0);
        add.setId("score-add");
        Region hair = Parts.rule();
        getChildren().addAll(top, ink, rows, hair, recordings, add);
    }

    void setNarrow(boolean isNarrow) {
        narrow = isNarrow;
        head.setText(Words.of(narrow ? "queue.short" : "queue.head"));
        rows.refresh();
    }

    void show(Queue queue, Optional<PassId> shown, Optional<RecordingId> marking) {
        count.setText(queue.settled() + "/" + queue.rows().size());
        current = shown.orElse(null);
        if (!rows.getItems().equals(queue.rows())) {
            rows.getItems().setAll(queue.rows());
        } else {
            rows.refresh();
        }
        shown.map(queue::indexOf).filter(at -> at >= 0).ifPresent(at -> rows.scrollTo(Math.max(0, at - 6)));
        recordings.getChildren().clear();
        for (ScoreReader.RecordingRow recording : queue.recordings()) {
            Label name = Parts.label(recording.fileName(), Style.SMALL);
            name.setMinWidth(0);
            Label passes = Parts.label(Integer.toString(recording.passes()), Style.HINT);
            passes.setMinWidth(Region.USE_PREF_SIZE);
            HBox row = new HBox(name, Parts.space(), passes);
            row.getStyleClass().add(Style.ROW);
            row.setAccessibleText(Words.of("recording.row", recording.fileName(), recording.passes()));
            Parts.choose(row, marking.equals(Optional.of(recording.id())));
            row.setOnMouseClicked(e -> model.markOn(recording.id()));
            recordings.getChildren().add(row);
        }
    }

    private final class Row extends ListCell<QueueRow> {
        private final Label ordinal = Parts.label("", Style.SMALL, Style.THIRD, Style.NUMBER);
        private final Label number = Parts.label("", Style.COW);
        private final Label mark = Parts.label("", Style.SMALL, Style.SECOND);
        private final HBox box = new HBox(ordinal, number, Parts.space(), mark);

        Row() {
            setStyle("-fx-padding: 0; -fx-background-color: transparent;");
            ordinal.setMinWidth(26);
            ordinal.setPrefWidth(26);
            number.setMinWidth(0);
            mark.setMinWidth(Region.USE_PREF_SIZE);
            box.getStyleClass().add(Style.ROW);
            box.setStyle("-fx-spacing: 6; -fx-padding: 0 8 0 10;");
            setPrefWidth(0);
            setOnMouseClicked(e -> {
                QueueRow row = getItem();
                if (row != null) {
                    model.select(row.pass());
                }
            });
        }

        @Override
        protected void updateItem(@Nullable QueueRow row, boolean empty) {
            super.updateItem(row, empty);
            if (row == null || empty) {
                setGraphic(null);
                return;
            }
            ordinal.setText(Integer.toString(row.ordinal()));
            ordinal.setManaged(!narrow);
            ordinal.setVisible(!narrow);
            number.setText(row.number().orElse(Words.of("queue.unknown")));
            mark.setText(row.settled() ? "✓" : row.number().isEmpty() && !narrow ? Words.of("queue.who") : "");
            Parts.choose(box, row.pass().equals(current));
            box.setAccessibleText(
                    Words.of(row.settled() ? "queue.rowDone" : "queue.rowOpen", row.ordinal(), number.getText()));
            setGraphic(box);
        }
    }
}
