package levelback.player.trim;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.geometry.Insets;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import levelback.player.theme.LegChip;
import levelback.player.theme.Style;
import levelback.scoring.foot.Claw;
import levelback.scoring.value.Leg;
import levelback.store.trim.Finding;
import levelback.store.trim.FindingId;
import levelback.store.trim.FootCard;

/** The middle column: the foot from below, and what is written of it. */
final class FootColumn extends VBox {

    private final TrimViewModel model;
    private final TrimWords words;
    private final HBox chip = new HBox();
    private final Label hint = CowColumn.styled(new Label(), Style.SECOND);
    private final TrimKey turn;
    private final FootMapView map;
    private final Label linesHead = CowColumn.styled(new Label(), Style.HEAD);
    private final VBox lines = new VBox();
    private final ScrollPane linesScroll = new ScrollPane(lines);
    private final VBox question = new VBox(8);
    private final Label beforeYouLift;

    FootColumn(TrimViewModel model, TrimWords words) {
        this.model = model;
        this.words = words;
        getStyleClass().add("trim-column-middle");
        setSpacing(4);

        Label below = CowColumn.styled(new Label(words.text("map.below")), Style.PAGE_HEAD);
        below.setMinWidth(Region.USE_PREF_SIZE);
        turn = new TrimKey(words.text("map.toesUp"), "", "Ctrl T", model::turn);
        turn.setMaxWidth(Region.USE_PREF_SIZE);
        turn.setMinWidth(Region.USE_PREF_SIZE);
        Region gap = new Region();
        HBox.setHgrow(gap, Priority.ALWAYS);
        HBox head = new HBox(8, chip, below, hint, gap, turn);
        head.setAlignment(Pos.CENTER_LEFT);
        chip.setAlignment(Pos.CENTER);
        hint.setMinWidth(0);

        map = new FootMapView(words, FootMap.Layer.WHOLE, 13, model::zone);
        map.setId("trim-map");
        VBox.setVgrow(map, Priority.ALWAYS);
        map.setMinHeight(368 + 46);
        VBox.setMargin(map, new Insets(0, 0, 6, 0));

        linesScroll.setFitToWidth(true);
        linesScroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
        linesScroll.setFocusTraversable(false);
        linesScroll.setMinHeight(48);
        beforeYouLift = CowColumn.styled(new Label(words.text("safety.line")), "trim-before");
        beforeYouLift.setWrapText(true);
        beforeYouLift.setMinHeight(Region.USE_PREF_SIZE);
        beforeYouLift.setMaxWidth(Double.MAX_VALUE);
        question.getStyleClass().add("trim-question");
        question.setMinHeight(Region.USE_PREF_SIZE);
        Region rule = CowColumn.styled(new Region(), Style.RULE);
        getChildren().setAll(head, map, rule, linesHead, question, linesScroll, beforeYouLift);
        head.setMinHeight(Region.USE_PREF_SIZE);
    }

    FootMapView map() {
        return map;
    }

    void show(TrimState.InChute now, boolean tight) {
        Leg leg = now.entry().leg();
        LegChip big = new LegChip(leg);
        big.getStyleClass().add("trim-chip");
        chip.getChildren().setAll(big);
        hint.setText(words.text(now.entry().toesUp() ? "map.turned" : "map.inHand"));
        turn.say(words.text(now.entry().toesUp() ? "map.toesDown" : "map.toesUp"), "");
        map.show(MapPictures.of(now));
        linesHead.setText(words.text("card.head", leg));
        Optional<FootCard> foot = now.cow().foot(leg);
        List<Node> rows = new ArrayList<>();
        foot.ifPresent(f -> f.findings().forEach(finding -> rows.add(line(now, f, finding))));
        if (foot.isEmpty()) {
            rows.add(quiet(words.text("card.notLifted", leg)));
        } else if (foot.get().foot().noLesion()) {
            rows.add(quiet(
                    words.text("card.noLesion", leg, words.actions(foot.get().actions()))));
        } else if (foot.get().findings().isEmpty()) {
            rows.add(quiet(
                    words.text("card.noWord", leg, words.actions(foot.get().actions()))));
        }
        lines.getChildren().setAll(rows);
        double rowPx = 50;
        linesScroll.setPrefHeight(Math.min(tight ? 1 : 3, Math.max(1, rows.size())) * rowPx);
        linesScroll.setMaxHeight(Math.max(1, rows.size()) * rowPx + 2);
        int current = 0;
        List<Finding> findings = foot.map(FootCard::findings).orElse(List.of());
        for (int i = 0; i < findings.size(); i++) {
            FindingId id = findings.get(i).id();
            current = now.entry().line().map(Entry.Line::id).filter(id::equals).isPresent() ? i : current;
        }
        linesScroll.setVvalue(rows.size() < 2 ? 0 : current / (rows.size() - 1.0));
        ask(now);
    }

    private Label quiet(String text) {
        Label label = CowColumn.styled(new Label(text), Style.SECOND, "trim-quiet");
        label.setWrapText(true);
        label.setMinHeight(46);
        return label;
    }

    private Node line(TrimState.InChute now, FootCard foot, Finding finding) {
        boolean current =
                now.entry().line().map(l -> l.id().equals(finding.id())).orElse(false);
        boolean changing = current && now.entry().changing();
        Label place = CowColumn.styled(
                new Label(words.place(finding.claw(), finding.zone(), finding.zoneConfirmed())), Style.STRONG);
        place.setMinWidth(62);
        Label code = CowColumn.styled(new Label(finding.lesion()), Style.STRONG);
        Node how = !finding.stage().isEmpty()
                ? CowColumn.styled(new Label(finding.stage()), Style.STRONG)
                : finding.severity().isPresent()
                        ? new SeverityBars(finding.severity().getAsInt(), 7)
                        : CowColumn.styled(new Label("–"), Style.SECOND);
        VBox codeAndBars = new VBox(2, code, how);
        codeAndBars.setAlignment(Pos.CENTER);
        codeAndBars.setMinWidth(38);
        String first = foot.findings().get(0).id().equals(finding.id()) ? words.actions(foot.actions()) : "";
        String rest = !finding.zoneConfirmed() && finding.zone().isPresent()
                ? words.text("card.confirm")
                : finding.note().isEmpty() ? first : finding.note();
        Label name = new Label(words.lesionName(finding.lesion()) + howWords(finding));
        Label more = CowColumn.styled(new Label(rest), Style.SMALL, Style.SECOND);
        more.setMinWidth(0);
        VBox text = rest.isEmpty() ? new VBox(name) : new VBox(name, more);
        text.setAlignment(Pos.CENTER_LEFT);
        text.setMinWidth(0);
        HBox.setHgrow(text, Priority.ALWAYS);
        HBox row = new HBox(12, place, codeAndBars, text);
        row.getStyleClass().addAll("trim-line", current ? "trim-line-current" : "trim-line-plain");
        row.setAlignment(Pos.CENTER_LEFT);
        row.setMinHeight(50);
        row.setPrefHeight(50);
        if (changing) {
            TrimKey off = new TrimKey(words.text("card.takeOff"), () -> model.takeOff(finding.id()));
            off.setMinWidth(Region.USE_PREF_SIZE);
            row.getChildren().add(off);
        }
        TrimKey change =
                new TrimKey(words.text(changing ? "card.changed" : "card.change"), () -> model.change(finding.id()));
        change.setMinWidth(Region.USE_PREF_SIZE);
        row.getChildren().add(change);
        return row;
    }

    private String howWords(Finding finding) {
        return finding.severity().isPresent()
                ? ", " + words.text("howBad." + finding.severity().getAsInt())
                : "";
    }

    private void ask(TrimState.InChute now) {
        question.getChildren().clear();
        CowColumn.show(question, now.question().isPresent());
        CowColumn.show(beforeYouLift, now.question().isEmpty());
        now.question().ifPresent(asked -> {
            Label text = CowColumn.styled(new Label(questionWords(asked, words)), Style.STRONG);
            text.setWrapText(true);
            text.setMinHeight(Region.USE_PREF_SIZE);
            TrimKey yes = new TrimKey(
                    words.text(asked instanceof Question.FeetUnsaid ? "ask.close" : "ask.meant"),
                    "",
                    "Enter",
                    () -> model.answer(true));
            TrimKey no = new TrimKey(words.text("ask.no"), "", "Esc", () -> model.answer(false));
            yes.setId("trim-yes");
            no.setId("trim-no");
            HBox keys = new HBox(8, no, yes);
            HBox.setHgrow(yes, Priority.ALWAYS);
            HBox.setHgrow(no, Priority.ALWAYS);
            question.getChildren().addAll(text, keys);
        });
    }

    static String questionWords(Question asked, TrimWords words) {
        if (asked instanceof Question.BlockOnInjuredClaw block) {
            String claw = words.claw(
                    levelback.player.work.SetActions.blockedClaw(block.action()).orElse(Claw.BOTH));
            return words.text("ask.block", claw, block.leg(), String.join(", ", block.codes()));
        }
        List<Leg> legs = ((Question.FeetUnsaid) asked).legs();
        return words.text(
                "ask.open", String.join(", ", legs.stream().map(Leg::name).toList()));
    }
}
