package levelback.player.trim;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import levelback.player.theme.LegChip;
import levelback.player.theme.ScoreTile;
import levelback.player.theme.Style;
import levelback.player.work.ChuteCow;
import levelback.player.work.ChuteRow;
import levelback.scoring.scale.GaitScales;
import levelback.scoring.value.Leg;

/** The left column: who she is, what to beware of, her feet, this foot before, her scores, who comes next. */
final class CowColumn extends VBox {

    private static final int SCORES_SHOWN = 5;

    private final TrimViewModel model;
    private final TrimWords words;
    private final Label number = styled(new Label(), Style.COW_BIG);
    private final Label name = styled(new Label(), "trim-name");
    private final Label place = styled(new Label(), Style.SMALL, Style.SECOND);
    private final HBox tile = new HBox();
    private final VBox cautions = new VBox(6);
    private final HBox otherDay = new HBox(8);
    private final GridPane feet = new GridPane();
    private final Map<Leg, TrimKey> footKeys = new EnumMap<>(Leg.class);
    private final Label beforeHead = styled(new Label(), Style.HEAD);
    private final FitBox before = new FitBox(1);
    private final Label scoresHead = styled(new Label(), Style.HEAD);
    private final HBox scores = new HBox(4);
    private final FlowPane scoresRow = new FlowPane(8, 4, scoresHead, scores);
    private final FitBox next = new FitBox(0);
    private final TextField typed = new TextField();
    private final TrimKey refuse;

    CowColumn(TrimViewModel model, TrimWords words) {
        this.model = model;
        this.words = words;
        getStyleClass().addAll("trim-column", Style.RIGHT_RULE);
        setSpacing(6);

        VBox who = new VBox(name, place);
        who.setAlignment(Pos.CENTER_LEFT);
        HBox.setHgrow(who, Priority.ALWAYS);
        who.setMinWidth(0);
        place.setWrapText(true);
        number.setMinWidth(Region.USE_PREF_SIZE);
        HBox head = new HBox(14, number, who, tile);
        head.setAlignment(Pos.CENTER_LEFT);
        tile.setAlignment(Pos.CENTER_RIGHT);
        tile.setMinWidth(Region.USE_PREF_SIZE);

        feet.setHgap(8);
        feet.setVgap(8);
        foot(Leg.LF, 0, 0);
        foot(Leg.RF, 1, 0);
        foot(Leg.LH, 0, 1);
        foot(Leg.RH, 1, 1);
        Label feetHead = styled(new Label(words.text("feet")), Style.HEAD);
        Label feetHint = styled(new Label(words.text("feet.above")), Style.SMALL, Style.SECOND);
        HBox feetRow = new HBox(8, feetHead, feetHint);
        feetRow.setAlignment(Pos.BASELINE_LEFT);

        typed.setPromptText(words.text("who.prompt"));
        typed.setId("trim-number");
        typed.setAccessibleText(words.text("who.prompt"));
        typed.getStyleClass().add("trim-field");
        typed.setOnAction(e -> bringIn());
        HBox.setHgrow(typed, Priority.ALWAYS);
        TrimKey bring = new TrimKey(words.text("who.bring"), this::bringIn);
        bring.setMinWidth(Region.USE_PREF_SIZE);
        refuse = new TrimKey(words.text("who.refused"), "", "", model::refuse);
        refuse.setId("trim-refuse");
        refuse.setMinWidth(Region.USE_PREF_SIZE);
        HBox typeRow = new HBox(6, typed, bring, refuse);

        VBox.setVgrow(next, Priority.ALWAYS);
        Label nextHead = styled(new Label(words.text("next")), Style.HEAD);
        getChildren()
                .setAll(
                        head,
                        otherDay,
                        cautions,
                        feetRow,
                        feet,
                        beforeHead,
                        before,
                        scoresRow,
                        nextHead,
                        next,
                        typeRow);
        for (Node node : List.of(head, otherDay, cautions, feetRow, feet, beforeHead, nextHead, typeRow)) {
            ((Region) node).setMinHeight(Region.USE_PREF_SIZE);
        }
    }

    private void foot(Leg leg, int column, int row) {
        TrimKey key = new TrimKey(leg.name(), () -> model.foot(leg))
                .with(new LegChip(leg))
                .left();
        key.setId("trim-foot-" + leg);
        key.setPrefWidth(200);
        footKeys.put(leg, key);
        GridPane.setHgrow(key, Priority.ALWAYS);
        feet.add(key, column, row);
    }

    private void bringIn() {
        model.openNumber(typed.getText());
        typed.clear();
    }

    void show(TrimState.InChute now, boolean tight) {
        ChuteCow cow = now.cow();
        number.setText(cow.cow().number());
        name.setText(cow.cow().name().orElse(""));
        name.setManaged(cow.cow().name().isPresent());
        place.setText(placeWords(now, tight));
        tile.getChildren().clear();
        now.row().ifPresent(row -> tileOf(row.scaleId(), row.level(), 34).ifPresent(tile.getChildren()::add));

        cautions.getChildren()
                .setAll(Cautions.of(cow, words).stream()
                        .map(Cautions.Words::drawn)
                        .toList());
        show(cautions, !cautions.getChildren().isEmpty());
        otherDay(now);

        footKeys.forEach((leg, key) -> {
            CardLines.FootStatus status = CardLines.status(now, leg, words);
            if (tight && status.status().equals("–")) {
                key.say(status.detail(), "");
            } else {
                key.say(status.status(), status.detail());
            }
            key.chosen(now.entry().leg() == leg);
            key.setPrefHeight(tight ? 46 : 54);
        });

        Leg leg = now.entry().leg();
        beforeHead.setText(words.text("before", leg));
        List<CardLines.Earlier> earlier = CardLines.earlier(cow, leg, words);
        List<Node> rows = new ArrayList<>();
        for (CardLines.Earlier line : earlier.subList(0, Math.min(tight ? 1 : 2, earlier.size()))) {
            TrimKey row = new TrimKey(
                            line.day() + "   " + line.found(),
                            line.done(),
                            "",
                            () -> model.setDay(line.card().lift().date()))
                    .left()
                    .styled("trim-row");
            rows.add(row);
        }
        if (rows.isEmpty()) {
            rows.add(styled(new Label(words.text("before.never")), Style.SECOND, "trim-quiet"));
        }
        before.setRows(rows);

        List<ChuteCow.VisitScore> last = cow.scores()
                .subList(
                        Math.max(0, cow.scores().size() - SCORES_SHOWN),
                        cow.scores().size());
        scoresHead.setText(
                last.isEmpty()
                        ? words.text("scores.none")
                        : words.text(
                                tight ? "scores.tight" : "scores",
                                last.get(0).visitOrdinal(),
                                last.get(last.size() - 1).visitOrdinal()));
        scores.getChildren().clear();
        last.forEach(score -> tileOf(score.scaleId(), OptionalDouble.of(score.level()), tight ? 20 : 30)
                .ifPresent(scores.getChildren()::add));
        show(scores, !last.isEmpty());

        List<Node> coming = new ArrayList<>();
        for (ChuteRow row : now.next()) {
            coming.add(nextRow(now, row));
        }
        if (coming.isEmpty()) {
            coming.add(styled(new Label(words.text("next.none")), Style.SECOND, "trim-quiet"));
        }
        next.setRows(coming);
        boolean control = now.row().map(row -> row.chance().isPresent()).orElse(false)
                || cow.card().map(card -> card.lift().chance().isPresent()).orElse(false);
        show(refuse, control && cow.card().map(card -> card.feet().isEmpty()).orElse(true));
        requestLayout();
    }

    private String placeWords(TrimState.InChute now, boolean tight) {
        if (now.row().isEmpty()) {
            return words.text("who.byNumber");
        }
        ChuteRow row = now.row().get();
        String of = words.text("who.place", now.place(), now.list().size());
        return switch (row.why()) {
            case LAME ->
                tight
                        ? words.text(
                                "who.lameShort", of, words.number(row.level().orElse(0)))
                        : words.text(
                                "who.lame",
                                of,
                                words.number(row.level().orElse(0)),
                                words.dayInRow(row.waitingSince(), now.day()));
            case CONTROL ->
                words.text("who.control", of, words.chance(row.chance().orElse(1)));
            case BY_NUMBER -> words.text("who.brought", of);
        };
    }

    /** Where the card of another day than the visit's is open, the way back stands right here. */
    private void otherDay(TrimState.InChute now) {
        boolean other = !now.day().equals(model.usualDay());
        otherDay.getChildren().clear();
        if (other) {
            TrimKey back = new TrimKey(
                    words.text("day.back", words.dayInRow(model.usualDay())), () -> model.setDay(model.usualDay()));
            Label label = styled(new Label(words.text("day.other", words.day(now.day()))), Style.STRONG);
            label.setWrapText(true);
            HBox.setHgrow(label, Priority.ALWAYS);
            otherDay.setAlignment(Pos.CENTER_LEFT);
            otherDay.getChildren().addAll(label, back);
        }
        show(otherDay, other);
    }

    private Node nextRow(TrimState.InChute now, ChuteRow row) {
        Label place = styled(new Label(Integer.toString(now.list().indexOf(row) + 1)), Style.SECOND);
        place.setMinWidth(22);
        Label number = styled(new Label(row.cow().number()), Style.COW);
        number.setMinWidth(Region.USE_PREF_SIZE);
        Label name = new Label(row.cow().name().orElse(""));
        name.setMinWidth(0);
        Region gap = new Region();
        HBox.setHgrow(gap, Priority.ALWAYS);
        HBox line = new HBox(8, place, number, name, gap);
        line.setAlignment(Pos.CENTER_LEFT);
        row.firstFoot().ifPresent(leg -> line.getChildren().add(new LegChip(leg)));
        tileOf(row.scaleId(), row.level(), 20).ifPresent(line.getChildren()::add);
        TrimKey key = new TrimKey("", () -> model.open(row.cow().id())).styled("trim-row");
        key.setGraphic(line);
        line.prefWidthProperty().bind(key.widthProperty().subtract(10));
        key.setAccessibleText(words.text("next.open", row.cow().number()));
        return key;
    }

    private static java.util.Optional<Node> tileOf(String scaleId, OptionalDouble level, double widthPx) {
        return GaitScales.byId(scaleId).map(scale -> new ScoreTile(scale, level, widthPx));
    }

    static void show(Node node, boolean is) {
        node.setVisible(is);
        node.setManaged(is);
    }

    static <N extends Node> N styled(N node, String... classes) {
        node.getStyleClass().addAll(classes);
        return node;
    }
}
