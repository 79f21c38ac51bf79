package levelback.player.score;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Consumer;
import java.util.function.IntConsumer;
import javafx.geometry.Insets;
import javafx.scene.control.Button;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import levelback.player.theme.Style;

/** A question with numbered answers, asked in the page itself: a digit or a click answers, Esc closes. */
final class ChoicePanel extends VBox {

    private final List<String> answers;
    private final IntConsumer chosen;
    private final Runnable closed;

    /**
     * @param columns 2 where the answers are short
     * @param free what to do with words of the user's own; empty where none are taken
     */
    ChoicePanel(
            String question,
            List<String> answers,
            int columns,
            IntConsumer chosen,
            Optional<Consumer<String>> free,
            Runnable closed) {
        super(6);
        this.answers = List.copyOf(answers);
        this.chosen = chosen;
        this.closed = closed;
        setPadding(new Insets(4, 0, 4, 0));
        GridPane grid = new GridPane();
        grid.setHgap(4);
        grid.setVgap(4);
        for (int i = 0; i < columns; i++) {
            ColumnConstraints column = new ColumnConstraints();
            column.setPercentWidth(100.0 / columns);
            grid.getColumnConstraints().add(column);
        }
        getChildren().addAll(Parts.label(question, Style.HEAD), grid);
        for (int i = 0; i < answers.size(); i++) {
            int answer = i;
            Button key = Parts.key("", "", () -> chosen.accept(answer));
            HBox box = new HBox(8, Parts.cap(Integer.toString(i + 1)), Parts.plain(answers.get(i)));
            box.setAlignment(javafx.geometry.Pos.CENTER_LEFT);
            key.setGraphic(box);
            key.setAccessibleText(answers.get(i));
            key.setAlignment(javafx.geometry.Pos.CENTER_LEFT);
            key.setMaxWidth(Double.MAX_VALUE);
            key.setMinWidth(0);
            grid.add(key, i % columns, i / columns);
        }
        free.ifPresent(take -> {
            TextField words = new TextField();
            words.setPromptText(Words.of("choice.own"));
            words.setOnAction(e -> {
                if (!words.getText().isBlank()) {
                    take.accept(words.getText().strip());
                }
            });
            getChildren().add(words);
        });
        HBox foot = new HBox(Parts.key(Words.of("choice.close"), "Esc", closed));
        foot.setPadding(new Insets(4, 0, 0, 0));
        getChildren().add(foot);
    }

    /** Offers a key; digits and Esc are taken, other keys are kept from the page while it asks. */
    boolean key(KeyEvent event) {
        OptionalInt digit = KeySet.digit(event);
        if (digit.isPresent() && digit.getAsInt() >= 1 && digit.getAsInt() <= answers.size()) {
            chosen.accept(digit.getAsInt() - 1);
            return true;
        }
        if (event.getCode() == KeyCode.ESCAPE) {
            closed.run();
            return true;
        }
        return false;
    }
}
