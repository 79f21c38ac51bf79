package levelback.player.proof;

import java.util.OptionalDouble;
import java.util.function.Consumer;
import javafx.collections.FXCollections;
import javafx.geometry.Insets;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import levelback.player.theme.Keys;
import levelback.player.theme.LegChip;
import levelback.player.theme.ScoreTile;
import levelback.player.theme.Style;
import levelback.scoring.proof.Observation;
import levelback.scoring.scale.GaitScale;
import org.jspecify.annotations.Nullable;

/** The cows behind a number; each opens her clip at the frame. Rows are made as they come into view. */
final class CowList extends VBox {

    private final ListView<Observation> list = new ListView<>();

    CowList(
            ProofViewModel.State.Answer answer,
            ProofViewModel.OpenList open,
            Consumer<Observation> clip,
            Runnable close) {
        getStyleClass().add(Style.SHEET);
        setPadding(new Insets(10, 14, 12, 16));
        setSpacing(8);
        Label title = new Label(open.title());
        title.getStyleClass().add(Style.HEAD);
        title.setWrapText(true);
        Label count =
                new Label(Words.of("list.count", Words.count(open.observations().size())));
        count.setId("proof-list-count");
        count.getStyleClass().add(Style.SECOND);
        Region gap = new Region();
        HBox.setHgrow(gap, Priority.ALWAYS);
        Button shut = Keys.button(Words.of("list.close"), "Esc");
        shut.setOnAction(e -> close.run());
        HBox head = new HBox(10, title, count, gap, shut);
        head.setAlignment(Pos.CENTER_LEFT);
        Label hint = new Label(Words.of("list.hint"));
        hint.getStyleClass().add(Style.HINT);
        list.setItems(FXCollections.observableList(open.observations()));
        list.setId("proof-list");
        list.setFixedCellSize(36);
        list.setCellFactory(view -> new Row(answer));
        VBox.setVgrow(list, Priority.ALWAYS);
        list.setOnKeyPressed(e -> {
            Observation chosen = list.getSelectionModel().getSelectedItem();
            if (e.getCode() == KeyCode.ENTER && chosen != null) {
                clip.accept(chosen);
                e.consume();
            }
        });
        list.setOnMouseClicked(e -> {
            Observation chosen = list.getSelectionModel().getSelectedItem();
            if (chosen != null) {
                clip.accept(chosen);
            }
        });
        if (!open.observations().isEmpty()) {
            list.getSelectionModel().select(0);
        }
        getChildren().setAll(head, hint, list);
    }

    /** Takes the keyboard. */
    void take() {
        list.requestFocus();
    }

    private static final class Row extends ListCell<Observation> {
        private final ProofViewModel.State.Answer answer;

        Row(ProofViewModel.State.Answer answer) {
            this.answer = answer;
        }

        @Override
        protected void updateItem(@Nullable Observation item, boolean empty) {
            super.updateItem(item, empty);
            setText(null);
            if (empty || item == null) {
                setGraphic(null);
                return;
            }
            ProofViewModel.CowLine cow =
                    answer.cows().getOrDefault(item.cow(), new ProofViewModel.CowLine(item.cow(), ""));
            Label number = label(cow.number(), 62, Style.COW);
            Label name = label(cow.name(), 110, Style.SECOND);
            Label day = label(Words.day(item.date()), 120, Style.SECOND);
            HBox row = new HBox(8, number, name, day, tile(answer.scale(), item.score()));
            item.leg().ifPresent(leg -> row.getChildren().add(new LegChip(leg)));
            Label found = new Label(found(item));
            HBox.setHgrow(found, Priority.ALWAYS);
            Label scorer = new Label(item.scorer());
            scorer.getStyleClass().addAll(Style.SMALL, Style.THIRD);
            Region gap = new Region();
            HBox.setHgrow(gap, Priority.ALWAYS);
            Label clip = new Label(Words.of("list.clip"));
            clip.getStyleClass().add(Style.OPENS);
            clip.setMinWidth(USE_PREF_SIZE);
            row.getChildren().addAll(found, gap, scorer, clip);
            row.setAlignment(Pos.CENTER_LEFT);
            setGraphic(row);
            setAccessibleText(Words.of("list.said", cow.number(), Words.level(item.score()), found(item)));
        }

        private static Region tile(GaitScale scale, double score) {
            return score >= scale.lowest() && score <= scale.highest()
                    ? new ScoreTile(scale, OptionalDouble.of(score), 20)
                    : new Label(Words.level(score));
        }

        private static String found(Observation item) {
            return switch (item.box()) {
                case WITH_LESION, NO_LESION ->
                    item.codes().isEmpty() ? Words.of("found.none") : String.join(" ", item.codes());
                case NEVER_LIFTED -> Words.of("found.never");
                case REFUSED -> Words.of("found.refused");
                case WINDOW_OPEN -> Words.of("found.open");
            };
        }

        private static Label label(String text, double width, String style) {
            Label label = new Label(text);
            label.setMinWidth(width);
            label.setPrefWidth(width);
            label.getStyleClass().add(style);
            return label;
        }
    }
}
