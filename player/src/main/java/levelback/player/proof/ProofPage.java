package levelback.player.proof;

import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Predicate;
import javafx.geometry.HPos;
import javafx.geometry.Insets;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ContextMenu;
import javafx.scene.control.Label;
import javafx.scene.control.MenuItem;
import javafx.scene.control.ProgressIndicator;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import levelback.player.desk.Desk;
import levelback.player.desk.Page;
import levelback.player.desk.PageId;
import levelback.player.proof.ProofViewModel.State;
import levelback.player.theme.EmptyState;
import levelback.player.theme.ErrorBar;
import levelback.player.theme.Keys;
import levelback.player.theme.Style;
import levelback.scoring.proof.Observation;
import levelback.scoring.proof.Observation.Box;
import levelback.scoring.proof.ProofQuestion;
import levelback.scoring.proof.ProofResult;
import levelback.scoring.proof.TwoByTwo;

/** Did the scores find the lesions? Every cow-visit is a mark; every number opens its cows, and a cow her clip. */
public final class ProofPage implements Page {

    private static final int[] WINDOWS = {2, 5, 7, 14, 28, 84};
    private static final String[] LESION_SETS = {"alarm", "any", "U", "WL", "DD", "SH"};
    private static final double NARROW = 1400;

    private final Desk desk;
    private final ProofViewModel model;
    private final StackPane root = new StackPane();
    private final BorderPane frame = new BorderPane();
    private final MarksView marks = new MarksView();
    private final Label worth = new Label();
    private final Label walkedPast = new Label();
    private final GridPane table = new GridPane();
    private final Charts.Chart shares = new Charts.Chart(150);
    private final FiguresPanel figures;
    private final ScrollPane figuresScroll = new ScrollPane();
    private final VBox left = new VBox(8);
    private final HBox controls = new HBox(8);
    private final ProgressIndicator busy = new ProgressIndicator();
    private boolean method;

    public ProofPage(Desk desk) {
        this(desk, Clock.system(java.time.ZoneId.systemDefault()));
    }

    /** @param clock says what day today is: follow-up ends then */
    ProofPage(Desk desk, Clock clock) {
        this.desk = desk;
        this.model = new ProofViewModel(desk, clock);
        this.figures = new FiguresPanel(model::open);
        build();
    }

    private void build() {
        root.setId("proof-page");
        root.getStyleClass().add(Style.SHEET);
        marks.onOpen(this::openBlock);
        marks.onCut(cut -> model.set(s -> s.withCut(cut)));
        VBox.setVgrow(marks, Priority.ALWAYS);
        worth.getStyleClass().addAll(Style.SMALL, Style.SECOND);
        walkedPast.setWrapText(true);
        walkedPast.setMinHeight(Region.USE_PREF_SIZE);
        walkedPast.setId("proof-walked-past");
        Label head = new Label(Words.of("marks.head"));
        head.getStyleClass().add(Style.HEAD);
        worth.setMinWidth(Region.USE_PREF_SIZE);
        HBox heads = new HBox(10, head, worth);
        heads.setAlignment(Pos.BASELINE_LEFT);
        Label sharesHead = new Label(Words.of("shares.head"));
        sharesHead.getStyleClass().add(Style.HEAD);
        sharesHead.setMinWidth(Region.USE_PREF_SIZE);
        VBox sharesBox = new VBox(2, sharesHead, shares);
        HBox.setHgrow(sharesBox, Priority.ALWAYS);
        table.setMinWidth(Region.USE_PREF_SIZE);
        Region rule = new Region();
        rule.getStyleClass().add(Style.INK_RULE);
        left.getChildren().setAll(heads, marks, walkedPast, rule, new HBox(16, table, sharesBox));
        left.setPadding(new Insets(10, 8, 8, 14));
        left.getStyleClass().addAll(Style.SHEET, Style.RIGHT_RULE);
        figuresScroll.setContent(figures);
        figuresScroll.setFitToWidth(true);
        figuresScroll.getStyleClass().add("edge-to-edge");
        busy.setMaxSize(18, 18);
        Label title = new Label(Words.of("title"));
        title.getStyleClass().add(Style.PAGE_HEAD);
        title.setMinWidth(Region.USE_PREF_SIZE);
        Label asks = new Label(Words.of("asks"));
        asks.getStyleClass().add(Style.SECOND);
        Region gap = new Region();
        HBox.setHgrow(gap, Priority.ALWAYS);
        controls.setAlignment(Pos.CENTER_RIGHT);
        HBox top = new HBox(10, title, asks, busy, gap, controls);
        top.setAlignment(Pos.CENTER_LEFT);
        top.setPadding(new Insets(0, 14, 0, 14));
        top.setMinHeight(50);
        top.getStyleClass().add(Style.BELOW_RULE);
        frame.setTop(top);
        root.widthProperty().addListener((o, was, is) -> fit());
        fit();
        model.stateProperty().addListener((o, was, is) -> render(is));
        render(model.stateProperty().get());
    }

    private void fit() {
        double wide = root.getWidth() > 0 && root.getWidth() < NARROW ? 520 : Math.max(624, root.getWidth() * 0.43);
        left.setMinWidth(wide);
        left.setPrefWidth(wide);
        left.setMaxWidth(wide);
    }

    private void render(State state) {
        if (state instanceof State.Answer answer) {
            ProofResult result = answer.result();
            busy.setVisible(answer.working());
            controls(answer);
            marks.show(result, answer.scale(), desk.dark());
            worth.setText(marks.worth() == 1 ? Words.of("marks.hint") : Words.of("marks.worth", marks.worth()));
            walkedPast(result);
            table(result);
            Charts.shares(shares, result, answer.scale(), desk.dark());
            frame.setLeft(left);
            if (method) {
                frame.setCenter(scroll(new MethodPanel(result, this::closeMethod)));
            } else if (answer.open().isPresent()) {
                CowList list = new CowList(answer, answer.open().get(), model::openClip, model::closeList);
                frame.setCenter(list);
                list.take();
            } else {
                figures.show(result, answer.tally().drawn(), answer.scale(), desk.dark());
                frame.setCenter(figuresScroll);
            }
            root.getChildren().setAll(frame);
            desk.gateLine(
                    PageId.PROOF,
                    gateLine(answer),
                    result.scored() == 0 ? 0 : (double) result.counts().lifted() / result.scored());
        } else if (state instanceof State.Working) {
            Label working = new Label(Words.of("working"));
            working.getStyleClass().add(Style.HEAD);
            VBox box = new VBox(12, new ProgressIndicator(), working);
            box.setAlignment(Pos.CENTER);
            root.getChildren().setAll(box);
        } else if (state instanceof State.Failed failed) {
            ErrorBar bar = new ErrorBar(failed.sentence());
            StackPane.setAlignment(bar, Pos.TOP_CENTER);
            bar.setMaxHeight(Region.USE_PREF_SIZE);
            root.getChildren().setAll(bar);
        } else {
            Button score = Keys.main(Words.of("empty.key"), "F2");
            score.setOnAction(e -> desk.go(PageId.SCORE));
            EmptyState empty = new EmptyState(Words.of("empty.missing"), Words.of("empty.how"), score);
            empty.setMaxSize(460, Region.USE_PREF_SIZE);
            root.getChildren().setAll(empty);
            desk.gateLine(PageId.PROOF, "–", 0);
        }
    }

    /** The visits whose scores the figures count. */
    private static String gateLine(State.Answer answer) {
        OptionalInt first = answer.tally().firstVisit();
        OptionalInt last = answer.tally().lastVisit();
        if (first.isEmpty() || last.isEmpty()) {
            return "–";
        }
        return first.getAsInt() == last.getAsInt()
                ? Words.of("gate.one", first.getAsInt())
                : Words.of("gate", first.getAsInt(), last.getAsInt());
    }

    private static ScrollPane scroll(Node content) {
        ScrollPane pane = new ScrollPane(content);
        pane.setFitToWidth(true);
        pane.getStyleClass().add("edge-to-edge");
        return pane;
    }

    // What is set

    private void controls(State.Answer answer) {
        ProofSettings now = answer.settings();
        ProofQuestion question = answer.result().question();
        Button cut = choice("cut", Words.of("cut.value", Words.level(question.cut())));
        answer.scale().levels().stream()
                .filter(l -> l.value() > answer.scale().lowest())
                .forEach(l -> item(
                        cut,
                        Words.of("cut.value", Words.level(l.value())),
                        () -> model.set(s -> s.withCut(l.value()))));
        Button window = choice("window", Words.of("window.value", now.windowToDays()));
        for (int days : WINDOWS) {
            item(window, Words.of("window.value", days), () -> model.set(s -> s.withWindow(days)));
        }
        Button unit = choice("unit", Words.of("unit." + now.unit().name()));
        for (ProofQuestion.Unit one : ProofQuestion.Unit.values()) {
            item(unit, Words.of("unit." + one.name()), () -> model.set(s -> s.withUnit(one)));
        }
        Button lesions = choice("lesions", Words.of("lesions." + now.lesions()));
        for (String set : LESION_SETS) {
            item(lesions, Words.of("lesions." + set), () -> model.set(s -> s.withLesions(set)));
        }
        Button methodKey = Keys.button(Words.of("method.key"), "M");
        methodKey.setId("proof-method");
        methodKey.setOnAction(e -> toggleMethod());
        controls.getChildren()
                .setAll(name("cut"), cut, name("window"), window, name("unit"), unit, name("lesions"), lesions);
        if (answer.scorers().size() > 1) {
            Button scorer = choice("scorer", now.scorer().orElse(Words.of("scorer.all")));
            item(scorer, Words.of("scorer.all"), () -> model.set(s -> s.withScorer(Optional.empty())));
            answer.scorers().forEach(one -> item(scorer, one, () -> model.set(s -> s.withScorer(Optional.of(one)))));
            controls.getChildren().addAll(name("scorer"), scorer);
        }
        controls.getChildren().add(methodKey);
    }

    private static Label name(String key) {
        Label label = new Label(Words.of(key));
        label.getStyleClass().addAll(Style.SMALL, Style.SECOND);
        label.setMinWidth(Region.USE_PREF_SIZE);
        return label;
    }

    private static Button choice(String key, String value) {
        Button button = Keys.button(value, "");
        button.setId("proof-choose-" + key);
        button.setAccessibleText(Words.of(key) + ": " + value);
        ContextMenu menu = new ContextMenu();
        button.setContextMenu(menu);
        button.setOnAction(e -> menu.show(button, javafx.geometry.Side.BOTTOM, 0, 2));
        return button;
    }

    private static void item(Button of, String text, Runnable does) {
        MenuItem item = new MenuItem(text);
        item.setOnAction(e -> does.run());
        of.getContextMenu().getItems().add(item);
    }

    // The left side

    private void walkedPast(ProofResult result) {
        Optional<ProofResult.AtScore> worst = result.byScore().stream()
                .filter(s -> s.score() < result.question().cut() && s.lifted() >= 5 && s.scored() > s.lifted())
                .max(java.util.Comparator.comparingLong(s -> s.scored() - s.lifted()));
        walkedPast.setVisible(worst.isPresent());
        walkedPast.setManaged(worst.isPresent());
        worst.ifPresent(s -> walkedPast.setText(Words.of(
                "walked.past",
                Words.count(s.scored() - s.lifted()),
                Words.level(s.score()),
                Words.count(s.lifted()),
                Words.count(s.withLesion()),
                Words.count(Math.round((double) (s.scored() - s.lifted()) * s.withLesion() / s.lifted())))));
    }

    private void table(ProofResult result) {
        table.getChildren().clear();
        table.setHgap(12);
        table.setVgap(6);
        String[] heads = {"table.score", "table.lesion", "table.clean", "table.never", "table.all"};
        for (int i = 0; i < heads.length; i++) {
            Label label = name(heads[i]);
            GridPane.setHalignment(label, i == 0 ? HPos.LEFT : HPos.RIGHT);
            table.add(label, i, 0);
        }
        Region rule = new Region();
        rule.getStyleClass().add(Style.INK_RULE);
        table.add(rule, 0, 1, heads.length, 1);
        double cut = result.question().cut();
        rowOf(2, Words.of("cut.value", Words.level(cut)), result, true);
        rowOf(3, Words.of("cut.below", Words.level(cut)), result, false);
    }

    private void rowOf(int row, String name, ProofResult result, boolean positive) {
        Predicate<Observation> side = o -> result.isPositive(o) == positive;
        Label first = new Label(name);
        first.setMinWidth(Region.USE_PREF_SIZE);
        table.add(first, 0, row);
        TwoByTwo counts = result.counts();
        List<ProofResult.AtScore> here = result.byScore().stream()
                .filter(at -> at.score() >= result.question().cut() == positive)
                .toList();
        long scored = here.stream().mapToLong(ProofResult.AtScore::scored).sum();
        long lifted = here.stream().mapToLong(ProofResult.AtScore::lifted).sum();
        count(
                row,
                1,
                positive ? "TP" : "FN",
                name,
                side.and(o -> o.box() == Box.WITH_LESION),
                positive ? counts.tp() : counts.fn());
        count(
                row,
                2,
                positive ? "FP" : "TN",
                name,
                side.and(o -> o.box() == Box.NO_LESION),
                positive ? counts.fp() : counts.tn());
        count(
                row,
                3,
                positive ? "NP" : "NN",
                name,
                side.and(o -> o.box() == Box.NEVER_LIFTED || o.box() == Box.REFUSED),
                scored - lifted);
        Label all = new Label(Words.count(scored));
        all.setMinWidth(Region.USE_PREF_SIZE);
        GridPane.setHalignment(all, HPos.RIGHT);
        table.add(all, 4, row);
    }

    private void count(int row, int column, String cell, String name, Predicate<Observation> which, long many) {
        Label n = new Label(Words.count(many));
        n.setId("proof-" + cell.toLowerCase(java.util.Locale.ROOT));
        n.getStyleClass().addAll(Style.OPENS, Style.COW);
        n.setMinWidth(Region.USE_PREF_SIZE);
        String column3 = Words.of(column == 1 ? "marks.lesion" : column == 2 ? "marks.clean" : "marks.never");
        n.setOnMouseClicked(e -> model.open(Words.of("list.box", name, column3), which));
        HBox box = new HBox(4, n);
        if (column < 3) {
            Label mark = new Label(cell);
            mark.getStyleClass().addAll(Style.HINT);
            mark.setMinWidth(Region.USE_PREF_SIZE);
            box.getChildren().add(mark);
        }
        box.setAlignment(Pos.BASELINE_RIGHT);
        GridPane.setHalignment(box, HPos.RIGHT);
        table.add(box, column, row);
    }

    private void openBlock(MarksView.Block block) {
        Predicate<Observation> which = o -> o.score() == block.score()
                && switch (block.column()) {
                    case LESION -> o.box() == Box.WITH_LESION;
                    case CLEAN -> o.box() == Box.NO_LESION;
                    case NEVER -> o.box() == Box.NEVER_LIFTED || o.box() == Box.REFUSED;
                };
        String column = Words.of(
                switch (block.column()) {
                    case LESION -> "marks.lesion";
                    case CLEAN -> "marks.clean";
                    case NEVER -> "marks.never";
                });
        model.open(Words.of("list.block", Words.level(block.score()), column), which);
    }

    private void toggleMethod() {
        method = !method;
        render(model.stateProperty().get());
    }

    private void closeMethod() {
        method = false;
        render(model.stateProperty().get());
    }

    // The desk's calls

    @Override
    public PageId id() {
        return PageId.PROOF;
    }

    @Override
    public Node view() {
        return root;
    }

    @Override
    public void shown() {
        model.reload();
    }

    @Override
    public void bookChanged() {
        model.reload();
    }

    @Override
    public void themeChanged() {
        render(model.stateProperty().get());
    }

    @Override
    public boolean key(KeyEvent event) {
        if (event.isControlDown() || event.isAltDown() || event.isMetaDown()) {
            return false;
        }
        boolean listOpen = model.stateProperty().get() instanceof State.Answer a
                && a.open().isPresent();
        switch (event.getCode()) {
            case ESCAPE -> {
                if (method) {
                    closeMethod();
                    return true;
                }
                return model.closeList();
            }
            case M -> {
                toggleMethod();
                return true;
            }
            case UP, DOWN -> {
                if (listOpen) {
                    return false;
                }
                model.moveCut(event.getCode() == javafx.scene.input.KeyCode.UP ? 1 : -1);
                return true;
            }
            case LEFT, RIGHT -> {
                marks.moveChoice(event.getCode() == javafx.scene.input.KeyCode.RIGHT ? 1 : -1);
                return true;
            }
            case ENTER -> {
                if (!listOpen && marks.chosen().isPresent()) {
                    openBlock(marks.chosen().get());
                    return true;
                }
                return false;
            }
            default -> {
                return false;
            }
        }
    }

    @Override
    public void close() {
        // Holds no film and no timer.
    }
}
