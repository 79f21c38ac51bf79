package levelback.player.score;

import java.util.List;
import java.util.Optional;
import java.util.function.IntConsumer;
import java.util.function.IntSupplier;
import javafx.geometry.Insets;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import levelback.player.theme.LegChip;
import levelback.player.theme.Note;
import levelback.player.theme.Style;
import levelback.scoring.foot.FootSign;
import levelback.store.herd.Tag;
import org.jspecify.annotations.Nullable;

/** The right column: score keys, history, signs, foot findings, and the way on. */
final class JudgePanel extends VBox {

    private static final List<String> REASONS = List.of("hidden", "few", "driven", "dark", "notWalking");

    private final ScoreViewModel model;
    private final IntSupplier frame;
    private final IntConsumer goTo;
    private final ScoreKeys scoreKeys;
    private final SignKeys signKeys;
    private final FeetKeys feet;
    private final VBox findings = new VBox();
    private final VBox lower = new VBox(8);
    private final Label findingsHead = Parts.label(Words.of("findings.head"), Style.HEAD);
    private final HBox feetBox;
    private final HBox allDone = new HBox();
    private @Nullable ChoicePanel asking;

    /**
     * @param frame the frame on the screen, numbered in the recording
     * @param goTo shows a frame
     */
    JudgePanel(ScoreViewModel model, KeySet keySet, IntSupplier frame, IntConsumer goTo) {
        super(8);
        this.model = model;
        this.frame = frame;
        this.goTo = goTo;
        getStyleClass().addAll(Style.SHEET, Style.LEFT_RULE);
        setPadding(new Insets(10, 14, 10, 14));
        scoreKeys = new ScoreKeys(model::score);
        signKeys = new SignKeys(keySet, sign -> model.sign(sign, frame.getAsInt()));
        feet = new FeetKeys(model::leg);
        feet.setMinWidth(Region.USE_PREF_SIZE);
        Label hint = Parts.label(Words.of("feet.hint"), Style.SMALL, Style.SECOND);
        hint.setWrapText(true);
        VBox list = new VBox(4, findings, Parts.key(Words.of("finding.add"), "Q", this::askFinding), hint);
        HBox.setHgrow(list, Priority.ALWAYS);
        list.setMinWidth(0);
        feetBox = new HBox(14, feet, list);
        lower.getChildren().addAll(signKeys, findingsHead, feetBox);
        ScrollPane scroll = new ScrollPane(lower);
        scroll.setFitToWidth(true);
        scroll.setFitToHeight(true);
        scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
        scroll.setFocusTraversable(false);
        scroll.setMinHeight(0);
        VBox.setVgrow(scroll, Priority.ALWAYS);
        HBox foot = new HBox(
                8,
                Parts.key(Words.of("cannot"), "U", this::askCannot),
                Parts.space(),
                Parts.mainKey(Words.of("next"), Words.of("cap.enter"), model::next));
        foot.setMinHeight(Region.USE_PREF_SIZE);
        // In a low window the signs and findings scroll; the score keys and the next thing stay in sight.
        getChildren().addAll(scoreKeys, scroll, allDone, foot);
    }

    void setLow(boolean low) {
        setSpacing(low ? 5 : 8);
        setPadding(new Insets(low ? 6 : 10, low ? 10 : 14, low ? 6 : 10, low ? 10 : 14));
        lower.setSpacing(low ? 4 : 8);
        scoreKeys.setLow(low);
        signKeys.setLow(low);
        feet.setVgap(low ? 3 : 6);
    }

    void show(ScoreViewModel.State.OnPass on) {
        scoreKeys.show(on.scale(), on.sheet());
        signKeys.show(on.sheet().tags());
        feet.show(on.leg());
        findings.getChildren().clear();
        on.sheet().tags().stream()
                .filter(tag -> tag.kind() == Tag.Kind.FOOT_FINDING)
                .forEach(tag -> findings.getChildren().add(findingRow(on, tag)));
        allDone.getChildren().clear();
        int passes = on.queue().rows().size();
        if (passes > 0 && on.queue().settled() == passes) {
            Note note = new Note(Words.of("done.all", passes));
            HBox.setHgrow(note, Priority.ALWAYS);
            allDone.getChildren().add(note);
        }
    }

    private Node findingRow(ScoreViewModel.State.OnPass on, Tag tag) {
        HBox row = new HBox(8);
        tag.leg().ifPresent(leg -> row.getChildren().add(new LegChip(leg)));
        Label text = Parts.label(ScoreViewModel.tagText(tag));
        text.setMinWidth(0);
        Label at = Parts.label(
                Words.of(
                        "frame.n",
                        Integer.toString(
                                tag.recordingFrame() - on.sheet().pass().fromFrame() + 1)),
                Style.SMALL,
                Style.OPENS);
        at.setMinWidth(Region.USE_PREF_SIZE);
        row.getChildren().addAll(text, Parts.space(), at);
        row.setAlignment(Pos.CENTER_LEFT);
        row.setMinHeight(26);
        row.getStyleClass().add(Style.BELOW_RULE);
        row.setOnMouseClicked(e -> goTo.accept(tag.recordingFrame()));
        return row;
    }

    private void askFinding() {
        List<FootSign> all = List.of(FootSign.values());
        // The feet stay in sight: the foot can still be chosen.
        ask(
                new ChoicePanel(
                        Words.of("finding.which"),
                        all.stream().map(f -> Words.of("finding." + f.key())).toList(),
                        2,
                        choice -> {
                            if (model.finding(all.get(choice), frame.getAsInt())) {
                                stopAsking();
                            }
                        },
                        Optional.empty(),
                        this::stopAsking),
                findingsHead,
                feetBox);
    }

    private void askCannot() {
        ask(new ChoicePanel(
                Words.of("cannot.why"),
                REASONS.stream().map(r -> Words.of("cannot." + r)).toList(),
                1,
                choice -> cannot(Words.of("cannot." + REASONS.get(choice))),
                Optional.of(this::cannot),
                this::stopAsking));
    }

    private void cannot(String reason) {
        stopAsking();
        model.cannotScore(reason, frame.getAsInt());
    }

    private void ask(ChoicePanel panel, Node... besides) {
        asking = panel;
        lower.getChildren().setAll(panel);
        lower.getChildren().addAll(besides);
    }

    void stopAsking() {
        asking = null;
        lower.getChildren().setAll(signKeys, findingsHead, feetBox);
    }

    /** Offers a key. */
    boolean key(KeyEvent event) {
        ChoicePanel open = asking;
        if (open != null && open.key(event)) {
            return true;
        }
        if (event.getCode() == KeyCode.Q) {
            askFinding();
            return true;
        }
        if (event.getCode() == KeyCode.U) {
            askCannot();
            return true;
        }
        return false;
    }
}
