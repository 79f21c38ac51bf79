package levelback.player.trim;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import javafx.geometry.Insets;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.RowConstraints;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import levelback.player.theme.LegChip;
import levelback.player.theme.ScoreTile;
import levelback.player.theme.Style;
import levelback.scoring.foot.FootAction;
import levelback.scoring.scale.GaitScales;
import levelback.scoring.value.Leg;
import levelback.store.trim.Finding;

/**
 * Chute mode: the card for a cold, gloved hand. Four steps, the one in force with a black number and asked for in words.
 * Where keys of 20 mm do not all fit, one step fills the screen at a time.
 */
final class ChuteView extends BorderPane {

    private static final double KEY_MM = 20;
    private static final double GAP_MM = 3;
    private static final double TITLE_PX = 30;
    private static final double MAP_LABEL_PX = 16;
    /** Width of a lesion key, in keys of 20 mm. */
    private static final double RIGHT_KEYS = 1.9;

    private final TrimViewModel model;
    private final TrimWords words;
    private final Runnable undo;
    private final Runnable leave;
    private final Runnable measure;
    private double pxPerMm = 96 / 25.4;
    private boolean measured;
    private boolean walls;
    private boolean feetAsked;
    private Optional<TrimState.InChute> shown = Optional.empty();

    ChuteView(TrimViewModel model, TrimWords words, Runnable undo, Runnable leave, Runnable measure) {
        this.model = model;
        this.words = words;
        this.undo = undo;
        this.leave = leave;
        this.measure = measure;
        getStyleClass().addAll("trim-chute", Style.GROUND);
        widthProperty().addListener((o, was, is) -> again());
        heightProperty().addListener((o, was, is) -> again());
    }

    /** Takes the size of the screen: measured, or 96 dots per inch until it is. */
    void screen(OptionalDouble measuredPxPerMm) {
        pxPerMm = measuredPxPerMm.orElse(96 / 25.4);
        measured = measuredPxPerMm.isPresent();
        again();
    }

    double keyPx() {
        return KEY_MM * pxPerMm;
    }

    double gapPx() {
        return GAP_MM * pxPerMm;
    }

    private void again() {
        shown.ifPresent(this::show);
    }

    /**
     * Whether all four steps fit at 20 mm; else one fills the screen at a time. The left column is the highest (two feet,
     * four keys), the middle one must leave 20 mm to its tightest zones, the heel and the cleft.
     */
    private boolean allFits(double headPx) {
        double k = keyPx();
        double g = gapPx();
        double body = getHeight() - 2 * g - headPx - 2 * g - k;
        double left = 2 * TITLE_PX + 6 * k + 7 * g;
        double map = body - TITLE_PX - 12 - k - 2 * (MAP_LABEL_PX + 10);
        double middle = getWidth() - 2 * g - 3 * g - (3 * k + g) - (3 * RIGHT_KEYS * k + 2 * g);
        return body >= left && map * 81 / 524 >= k && middle * 78 / 556 >= k;
    }

    void show(TrimState.InChute now) {
        if (shown.map(was -> was.entry().leg() != now.entry().leg()
                        || !was.cow().cow().id().equals(now.cow().cow().id()))
                .orElse(true)) {
            walls = false;
        }
        if (now.entry().footNext()) {
            feetAsked = true;
        } else if (shown.map(was -> was.entry().footNext()).orElse(false)) {
            feetAsked = false;
        }
        shown = Optional.of(now);
        double g = gapPx();
        setPadding(new Insets(g));
        Region head = head(now);
        setTop(head);
        head.applyCss();
        double headPx = Math.max(1.1 * keyPx(), head.prefHeight(getWidth() - 2 * g));
        Node body = allFits(headPx) ? all(now) : one(now);
        BorderPane.setMargin(body, new Insets(g, 0, g, 0));
        setCenter(body);
        setBottom(now.question().isPresent() ? question(now) : bottom(now));
    }

    private Node all(TrimState.InChute now) {
        double g = gapPx();
        VBox left = new VBox(
                g,
                title("", words.text("chute.foot"), "*", false),
                feet(now),
                title("4", words.text("chute.then"), "", step(now) == Entry.Step.THEN),
                then(now, 1));
        VBox.setVgrow(left.getChildren().get(3), Priority.ALWAYS);
        left.setPrefWidth(3 * keyPx() + g);
        left.setMinWidth(3 * keyPx() + g);
        VBox middle = new VBox(
                6,
                title("1", words.text("chute.where"), words.text("chute.whereHint"), step(now) == Entry.Step.WHERE),
                map(now, walls ? FootMap.Layer.WALLS : FootMap.Layer.SOLE),
                wallsKey(words.text("chute.walls")));
        VBox.setVgrow(middle.getChildren().get(1), Priority.ALWAYS);
        VBox.setMargin(middle.getChildren().get(1), new Insets(0, 0, 4, 0));
        HBox.setHgrow(middle, Priority.ALWAYS);
        VBox right = new VBox(
                g,
                title("2", words.text("chute.what"), words.text("chute.whatHint"), step(now) == Entry.Step.WHAT),
                what(now),
                title("3", words.text("chute.howBad"), "", step(now) == Entry.Step.HOW_BAD),
                howBad(now),
                moreAndNone(now));
        VBox.setVgrow(right.getChildren().get(1), Priority.ALWAYS);
        right.setPrefWidth(3 * RIGHT_KEYS * keyPx() + 2 * g);
        right.setMinWidth(3 * RIGHT_KEYS * keyPx() + 2 * g);
        return new HBox(1.5 * g, left, middle, right);
    }

    private Node one(TrimState.InChute now) {
        double g = gapPx();
        VBox box = new VBox(6);
        if (feetAsked) {
            Region feet = feet(now);
            box.getChildren().addAll(title("", words.text("chute.foot"), "*", true), feet);
            VBox.setVgrow(feet, Priority.ALWAYS);
            return box;
        }
        switch (step(now)) {
            case WHERE -> {
                Region map = map(now, walls ? FootMap.Layer.WALLS : FootMap.Layer.SOLE_LOW);
                HBox.setHgrow(map, Priority.ALWAYS);
                ChuteKey foot = key(now.entry().leg().name(), words.text("chute.otherFoot"), "*", () -> {
                            feetAsked = true;
                            again();
                        })
                        .named("chute-feet");
                VBox side = new VBox(g, foot, wallsKey(words.text("chute.wallsLow")), none(now));
                side.setPrefWidth(3.2 * keyPx());
                side.setMinWidth(2 * keyPx());
                side.getChildren().forEach(n -> VBox.setVgrow(n, Priority.ALWAYS));
                HBox row = new HBox(g, map, side);
                VBox.setVgrow(row, Priority.ALWAYS);
                box.getChildren()
                        .addAll(title("1", words.text("chute.where"), words.text("chute.whereHint"), true), row);
            }
            case WHAT -> {
                Region what = what(now);
                Region more = more(now);
                HBox.setHgrow(what, Priority.ALWAYS);
                HBox row = new HBox(g, what, more);
                more.setPrefWidth(2.4 * keyPx());
                VBox.setVgrow(row, Priority.ALWAYS);
                box.getChildren().addAll(title("2", words.text("chute.what"), words.text("chute.whatHint"), true), row);
            }
            case HOW_BAD -> {
                Region how = howBad(now);
                VBox.setVgrow(how, Priority.ALWAYS);
                box.getChildren().addAll(title("3", words.text("chute.howBad"), "", true), how);
            }
            case THEN -> {
                Region then = then(now, 2);
                VBox.setVgrow(then, Priority.ALWAYS);
                box.getChildren().addAll(title("4", words.text("chute.then"), "", true), then);
            }
        }
        return box;
    }

    private static Entry.Step step(TrimState.InChute now) {
        return now.entry().step();
    }

    private Region head(TrimState.InChute now) {
        Label number = CowColumn.styled(new Label(now.cow().cow().number()), "trim-chute-cow");
        number.setMinWidth(Region.USE_PREF_SIZE);
        Label name = CowColumn.styled(new Label(now.cow().cow().name().orElse("")), "trim-chute-first");
        Label place = CowColumn.styled(
                new Label(
                        now.place() == 0
                                ? ""
                                : words.text(
                                        "who.place", now.place(), now.list().size())),
                "trim-chute-second");
        VBox who = new VBox(name, place);
        who.setAlignment(Pos.CENTER_LEFT);
        who.setMinWidth(Region.USE_PREF_SIZE);
        HBox head = new HBox(gapPx(), number, who);
        now.row()
                .ifPresent(row -> GaitScales.byId(row.scaleId())
                        .ifPresent(scale -> head.getChildren().add(new ScoreTile(scale, row.level(), 50))));
        FlowPane cautions = new FlowPane(4, 4);
        cautions.setMinWidth(0);
        Cautions.of(now.cow(), words).forEach(c -> cautions.getChildren().add(c.drawn()));
        cautions.getStyleClass().add("trim-chute-cautions");
        cautions.setAlignment(Pos.CENTER_LEFT);
        HBox.setHgrow(cautions, Priority.ALWAYS);
        head.getChildren().add(cautions);
        if (!measured) {
            head.getChildren()
                    .add(key(words.text("chute.measure"), words.text("chute.notMeasured"), "", measure)
                            .named("chute-measure"));
        }
        head.getChildren().add(key(words.text("chute.leave"), "", "F9", leave).named("chute-leave"));
        head.setAlignment(Pos.CENTER_LEFT);
        head.getChildren().stream()
                .filter(ChuteKey.class::isInstance)
                .map(ChuteKey.class::cast)
                .forEach(k -> k.setPrefWidth(2 * keyPx()));
        return head;
    }

    private Node bottom(TrimState.InChute now) {
        ChuteKey back = key(
                        words.text("chute.undo"), now.cow().nextUndo().orElse(words.text("chute.nothing")), "−", undo)
                .named("chute-undo");
        back.setPrefWidth(4.2 * keyPx());
        back.setMaxWidth(4.2 * keyPx());
        Label ask = CowColumn.styled(new Label(prompt(now)), "trim-chute-ask");
        ask.setId("chute-ask");
        ask.setWrapText(true);
        ask.setAlignment(Pos.CENTER);
        ask.setMaxWidth(Double.MAX_VALUE);
        HBox.setHgrow(ask, Priority.ALWAYS);
        ChuteKey next = key(words.text("nextFoot"), "", "+", model::nextFoot).named("chute-nextFoot");
        next.setPrefWidth(2.4 * keyPx());
        ChuteKey done = key(words.text("cowDone"), "", "Enter", model::cowDone)
                .named("chute-cowDone")
                .styled(Style.KEY_MAIN);
        done.setPrefWidth(2.7 * keyPx());
        HBox row = new HBox(gapPx(), back, ask, next, done);
        row.setAlignment(Pos.CENTER);
        return row;
    }

    private Node question(TrimState.InChute now) {
        Question asked = now.question().orElseThrow();
        Label text = CowColumn.styled(new Label(FootColumn.questionWords(asked, words)), "trim-chute-ask");
        text.setWrapText(true);
        text.setMaxWidth(Double.MAX_VALUE);
        HBox.setHgrow(text, Priority.ALWAYS);
        ChuteKey no =
                key(words.text("ask.no"), "", "−", () -> model.answer(false)).named("chute-no");
        ChuteKey yes = key(
                        words.text(asked instanceof Question.FeetUnsaid ? "ask.close" : "ask.meant"),
                        "",
                        "Enter",
                        () -> model.answer(true))
                .named("chute-yes");
        no.setPrefWidth(2.6 * keyPx());
        yes.setPrefWidth(3.2 * keyPx());
        HBox row = new HBox(gapPx(), text, no, yes);
        row.getStyleClass().add("trim-question");
        row.setAlignment(Pos.CENTER);
        return row;
    }

    /** What is asked for, in words. */
    String prompt(TrimState.InChute now) {
        Entry entry = now.entry();
        Leg leg = entry.leg();
        if (entry.footNext()) {
            return words.text("chute.askFoot");
        }
        if (entry.padZero()) {
            return words.text("chute.askZero");
        }
        if (entry.line().isEmpty()
                && now.cow().foot(leg).map(f -> f.foot().noLesion()).orElse(false)) {
            return words.text("chute.saidNone", leg);
        }
        String place = entry.chosen().map(words::place).orElse(words.claw(entry.claw()));
        Optional<Finding> line = entry.line().flatMap(l -> TrimViewModel.line(now.cow(), l.id()));
        String code = line.map(words::code)
                .orElse(entry.line().map(Entry.Line::lesion).orElse(""));
        return switch (entry.step()) {
            case WHERE ->
                code.isEmpty()
                        ? words.text("chute.askWhere", leg, words.claw(entry.claw()))
                        : words.text("chute.askConfirm", leg, place, code);
            case WHAT -> words.text("chute.askWhat", leg, place);
            case HOW_BAD -> words.text("chute.askHowBad", leg, place, code);
            case THEN -> words.text("chute.askThen", leg, place, code);
        };
    }

    private Region feet(TrimState.InChute now) {
        GridPane grid = grid(2, 2);
        Leg[] legs = {Leg.LF, Leg.RF, Leg.LH, Leg.RH};
        String[] digits = {"7", "9", "1", "3"};
        for (int i = 0; i < legs.length; i++) {
            Leg leg = legs[i];
            LegChip chip = new LegChip(leg);
            chip.getStyleClass().add("trim-chute-chip");
            CardLines.FootStatus status = CardLines.status(now, leg, words);
            String said = status.status().equals("–") ? status.detail() : status.status();
            grid.add(
                    key("", said, digits[i], () -> {
                                feetAsked = false;
                                model.foot(leg);
                            })
                            .with(chip)
                            .named("chute-foot-" + leg)
                            .down(now.entry().leg() == leg),
                    i % 2,
                    i / 2);
        }
        return grid;
    }

    private Region then(TrimState.InChute now, int across) {
        FootAction block = model.blockOnSound(now);
        java.util.Set<FootAction> done =
                now.cow().foot(now.entry().leg()).map(f -> f.actions()).orElse(java.util.Set.of());
        Optional<java.time.LocalDate> look = now.cow().card().flatMap(c -> c.lookAgainOn());
        List<ChuteKey> keys = List.of(
                key(words.text("chute." + block.key()), "", "1", () -> model.action(block))
                        .named("chute-block")
                        .down(done.contains(block)),
                key(words.text("done.block-off"), "", "2", () -> model.action(FootAction.BLOCK_OFF))
                        .named("chute-blockOff")
                        .down(done.contains(FootAction.BLOCK_OFF)),
                key(words.text("done.bandage"), "", "3", () -> model.action(FootAction.BANDAGE))
                        .named("chute-bandage")
                        .down(done.contains(FootAction.BANDAGE)),
                key(
                                words.text("chute.look"),
                                look.map(words::day).orElse(words.text("chute.lookNot")),
                                "4",
                                model::lookAgainUsual)
                        .named("chute-look")
                        .down(look.isPresent()));
        GridPane grid = grid(across, (keys.size() + across - 1) / across);
        for (int i = 0; i < keys.size(); i++) {
            grid.add(keys.get(i), i % across, i / across);
        }
        return grid;
    }

    private Region map(TrimState.InChute now, FootMap.Layer layer) {
        FootMapView map = new FootMapView(words, layer, MAP_LABEL_PX, model::zone);
        map.setId("chute-map");
        map.setFocusTraversable(false);
        map.show(MapPictures.of(now));
        map.setMaxWidth(900);
        return map;
    }

    private ChuteKey wallsKey(String text) {
        return key(walls ? words.text("chute.sole") : text, "", "", () -> {
                    walls = !walls;
                    again();
                })
                .named("chute-walls");
    }

    private Region what(TrimState.InChute now) {
        GridPane grid = grid(3, 3);
        List<String> codes = LesionKeys.PAD.get(now.entry().more() % LesionKeys.PAD.size());
        String written = now.entry().line().map(Entry.Line::lesion).orElse("");
        for (int i = 0; i < codes.size(); i++) {
            String code = codes.get(i);
            grid.add(
                    key(code, words.lesionName(code), Integer.toString(LesionKeys.padDigit(i)), () -> model.code(code))
                            .named("chute-code-" + code)
                            .styled("trim-chute-code")
                            .down(code.equals(written)),
                    i % 3,
                    i / 3);
        }
        return grid;
    }

    private Region howBad(TrimState.InChute now) {
        int keys = PadKeys.howBadKeys(now.entry());
        GridPane grid = grid(keys, 1);
        Optional<Finding> line = now.entry().line().flatMap(l -> TrimViewModel.line(now.cow(), l.id()));
        for (int i = 1; i <= keys; i++) {
            int said = i;
            boolean staged = keys > 3;
            String text = staged ? TrimViewModel.STAGES.get(i - 1) : words.text("howBad." + i);
            ChuteKey key =
                    key(text, "", Integer.toString(i), () -> model.howBad(said)).named("chute-howBad-" + i);
            if (!staged) {
                key.with(new SeverityBars(i, 12));
            }
            boolean down = line.map(f -> staged
                            ? f.stage().equals(text)
                            : f.severity().isPresent() && f.severity().getAsInt() == said)
                    .orElse(false);
            grid.add(key.down(down), i - 1, 0);
        }
        return grid;
    }

    private ChuteKey more(TrimState.InChute now) {
        int next = (now.entry().more() + 1) % LesionKeys.PAD.size();
        return key(
                        words.text("more"),
                        words.text("chute.more", LesionKeys.PAD.get(next).get(0)),
                        "0",
                        () -> model.more(next))
                .named("chute-more")
                .styled("trim-chute-dashed");
    }

    private ChuteKey none(TrimState.InChute now) {
        return key(words.text("chute.none"), "", ".", model::noLesion)
                .named("chute-noLesion")
                .down(now.cow()
                        .foot(now.entry().leg())
                        .map(f -> f.foot().noLesion())
                        .orElse(false));
    }

    private Node moreAndNone(TrimState.InChute now) {
        GridPane grid = grid(3, 1);
        grid.add(more(now), 0, 0);
        grid.add(none(now), 1, 0, 2, 1);
        return grid;
    }

    private GridPane grid(int across, int down) {
        GridPane grid = new GridPane();
        grid.setHgap(gapPx());
        grid.setVgap(gapPx());
        for (int i = 0; i < across; i++) {
            ColumnConstraints column = new ColumnConstraints();
            column.setPercentWidth(100.0 / across);
            column.setMinWidth(keyPx());
            grid.getColumnConstraints().add(column);
        }
        for (int i = 0; i < down; i++) {
            RowConstraints row = new RowConstraints();
            row.setVgrow(Priority.ALWAYS);
            row.setMinHeight(keyPx());
            row.setPercentHeight(100.0 / down);
            grid.getRowConstraints().add(row);
        }
        return grid;
    }

    private Node title(String number, String text, String hint, boolean inForce) {
        HBox row = new HBox(10);
        row.setAlignment(Pos.CENTER_LEFT);
        if (!number.isEmpty()) {
            StackPane disc = new StackPane(CowColumn.styled(new Label(number), "trim-step-number"));
            disc.getStyleClass().addAll("trim-step", inForce ? "trim-step-on" : "trim-step-off");
            row.getChildren().add(disc);
        }
        row.getChildren()
                .addAll(
                        CowColumn.styled(new Label(text), "trim-chute-title"),
                        CowColumn.styled(new Label(hint), "trim-chute-second"));
        row.setMinHeight(TITLE_PX);
        row.setMaxHeight(TITLE_PX);
        return row;
    }

    private ChuteKey key(String text, String small, String cap, Runnable action) {
        return new ChuteKey(keyPx(), text, small, cap, action);
    }
}
