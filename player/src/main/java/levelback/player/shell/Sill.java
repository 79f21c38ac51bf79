package levelback.player.shell;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.animation.PauseTransition;
import javafx.application.Platform;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.ContextMenu;
import javafx.scene.control.Label;
import javafx.scene.control.MenuItem;
import javafx.scene.control.ProgressBar;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.util.Duration;
import levelback.player.desk.Desk;
import levelback.player.theme.Keys;

/** The bottom of the desk: undo with its words, the longest job or a message, who is signed on, when it was saved. */
final class Sill extends HBox {

    private static final Duration MESSAGE = Duration.seconds(6);

    private final Button undo = Keys.button(Words.of("undo"), "Ctrl Z");
    private final Label undoWords = new Label();
    private final HBox middle = new HBox(8);
    private final Button scorer = new Button();
    private final Label saved = new Label(Words.of("saved.not"));
    private final Button keys = Keys.button(Words.of("keys"), "F12");
    private final List<Running> jobs = new ArrayList<>();
    private final PauseTransition messageEnds = new PauseTransition(MESSAGE);
    private Optional<String> message = Optional.empty();

    Sill(Runnable onUndo, Runnable onScorer, Runnable onKeys) {
        super(10);
        getStyleClass().add("lb-sill");
        setAlignment(Pos.CENTER_LEFT);
        undo.setId("undo");
        undoWords.setId("undo-words");
        undo.setOnAction(e -> onUndo.run());
        scorer.setOnAction(e -> onScorer.run());
        scorer.setId("scorer");
        keys.setOnAction(e -> onKeys.run());
        for (Button quiet : List.of(scorer, keys)) {
            quiet.getStyleClass().add("lb-sill-quiet");
        }
        undo.getStyleClass().add("lb-sill-key");
        undoWords.setMinWidth(0);
        undoWords.setId("undo-words");
        saved.setId("saved");
        saved.setMinWidth(Region.USE_PREF_SIZE);
        saved.getStyleClass().add("lb-gate-line");
        middle.setAlignment(Pos.CENTER);
        middle.setId("sill-middle");
        HBox.setHgrow(middle, Priority.ALWAYS);
        getChildren().addAll(undo, undoWords, middle, scorer, saved, keys);
        messageEnds.setOnFinished(e -> {
            message = Optional.empty();
            redraw();
        });
        nextUndo(Optional.empty());
    }

    void nextUndo(Optional<String> words) {
        undo.setDisable(words.isEmpty());
        undoWords.setText(words.orElseGet(() -> Words.of("undo.nothing")));
    }

    void scorer(String name) {
        scorer.setText(name);
        scorer.setVisible(!name.isEmpty());
    }

    void savedAt(LocalDateTime at) {
        saved.setText(Words.of("saved", Words.moment(at, LocalDate.now(ZoneId.systemDefault()))));
    }

    void message(String text) {
        message = Optional.of(text);
        messageEnds.playFromStart();
        redraw();
    }

    Desk.Job job(String name, Runnable stop) {
        Running job = new Running(name, stop);
        jobs.add(job);
        redraw();
        return job;
    }

    private void redraw() {
        middle.getChildren().clear();
        if (message.isPresent()) {
            Label text = new Label(message.get());
            text.setId("sill-message");
            middle.getChildren().add(text);
            return;
        }
        if (jobs.isEmpty()) {
            return;
        }
        Running longest = jobs.get(0);
        Label name = new Label(jobs.size() == 1 ? longest.name : Words.of("job.more", longest.name, jobs.size() - 1));
        name.setOnMouseClicked(e -> listJobs());
        Button stop = Keys.button(Words.of("stop"), "");
        stop.getStyleClass().add("lb-sill-key");
        stop.setOnAction(e -> longest.stop.run());
        middle.getChildren().addAll(name, longest.bar, longest.line, stop);
    }

    private void listJobs() {
        ContextMenu menu = new ContextMenu();
        for (Running job : jobs) {
            MenuItem item = new MenuItem(Words.of("stop") + ": " + job.name + " " + job.line.getText());
            item.setOnAction(e -> job.stop.run());
            menu.getItems().add(item);
        }
        menu.show(middle, javafx.geometry.Side.TOP, middle.getWidth() / 3, 0);
    }

    private final class Running implements Desk.Job {
        private final String name;
        private final Runnable stop;
        private final long startedNs = System.nanoTime();
        private final ProgressBar bar = new ProgressBar(0);
        private final Label line = new Label();
        private volatile double fraction;
        private volatile boolean asked;

        Running(String name, Runnable stop) {
            this.name = name;
            this.stop = stop;
            bar.setPrefWidth(150);
            line.setMinWidth(Region.USE_PREF_SIZE);
        }

        @Override
        public void progress(double fractionDone) {
            fraction = Math.max(0, Math.min(1, fractionDone));
            // One request in flight at a time, so that a fast job cannot flood the JavaFX thread.
            if (!asked) {
                asked = true;
                Platform.runLater(() -> {
                    asked = false;
                    show();
                });
            }
        }

        private void show() {
            bar.setProgress(fraction);
            double elapsedS = (System.nanoTime() - startedNs) / 1e9;
            long percent = Math.round(fraction * 100);
            if (fraction < 0.02 || elapsedS < 1) {
                line.setText(Words.of("job.lineNoTime", percent));
                return;
            }
            long left = Math.round(elapsedS * (1 - fraction) / fraction);
            String time = left < 60 ? Words.of("time.seconds", left) : Words.of("time.minutes", left / 60, left % 60);
            line.setText(Words.of("job.line", percent, time));
        }

        @Override
        public void close() {
            Platform.runLater(() -> {
                jobs.remove(this);
                redraw();
            });
        }
    }
}
