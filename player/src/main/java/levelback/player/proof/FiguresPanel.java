package levelback.player.proof;

import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.Predicate;
import javafx.geometry.HPos;
import javafx.geometry.Insets;
import javafx.geometry.VPos;
import javafx.scene.control.Label;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import levelback.player.theme.Caution;
import levelback.player.theme.IntervalBar;
import levelback.player.theme.LegChip;
import levelback.player.theme.Note;
import levelback.player.theme.Style;
import levelback.scoring.foot.Lesion;
import levelback.scoring.foot.Lesions;
import levelback.scoring.proof.Observation;
import levelback.scoring.proof.ProofResult;
import levelback.scoring.proof.Proportions;
import levelback.scoring.scale.GaitScale;
import levelback.scoring.value.Estimate;
import levelback.scoring.value.Interval;
import levelback.scoring.value.Leg;

/** The right side: lifted only beside corrected, each cut, by lesion, by leg, score to lift. */
final class FiguresPanel extends VBox {

    /** The dot reaches over the end of its line; twelve pixels stay free before what comes next. */
    private static final Insets ROOM_FOR_DOT = new Insets(0, 12, 0, 6);

    private final BiConsumer<String, Predicate<Observation>> opens;

    FiguresPanel(BiConsumer<String, Predicate<Observation>> opens) {
        this.opens = opens;
        setSpacing(10);
        setPadding(new Insets(10, 14, 12, 16));
        getStyleClass().add(Style.SHEET);
    }

    /** @param drawn control lifts, drawn by chance and done */
    void show(ProofResult result, long drawn, GaitScale scale, boolean dark) {
        VBox estimates = new VBox(8, estimates(result), caution(result, drawn));
        HBox.setHgrow(estimates, Priority.ALWAYS);
        Charts.Chart roc = new Charts.Chart(300);
        roc.setId("proof-cuts");
        roc.setMinWidth(226);
        roc.setPrefWidth(290);
        Charts.roc(roc, result, scale, dark);
        VBox cuts = new VBox(6, head("roc.head"), roc);
        HBox upper = new HBox(14, estimates, cuts);
        Region rule = new Region();
        rule.getStyleClass().add(Style.INK_RULE);
        VBox lesions = new VBox(byLesion(result));
        HBox.setHgrow(lesions, Priority.ALWAYS);
        VBox legs = new VBox(8, byLeg(result), lag(result, dark));
        legs.setMinWidth(236);
        legs.setPrefWidth(290);
        getChildren().setAll(upper, rule, new HBox(20, lesions, legs));
    }

    // Estimates

    private static GridPane estimates(ProofResult result) {
        GridPane grid = new GridPane();
        grid.setHgap(8);
        double[] widths = {78, 44, 74, 0, 44, 74, 0};
        for (double width : widths) {
            ColumnConstraints column = new ColumnConstraints();
            if (width > 0) {
                column.setMinWidth(width);
            } else {
                column.setHgrow(Priority.ALWAYS);
                column.setMinWidth(38);
            }
            grid.getColumnConstraints().add(column);
        }
        grid.add(small("observed.head"), 1, 0, 3, 1);
        grid.add(small("corrected.head"), 4, 0, 3, 1);
        Region line = new Region();
        line.getStyleClass().add(Style.INK_RULE);
        grid.add(line, 0, 1, 7, 1);
        ProofResult.Observed o = result.observed();
        Optional<ProofResult.Corrected> c = result.corrected();
        row(grid, 2, "sensitivity", o.sensitivity(), c.map(ProofResult.Corrected::sensitivity));
        row(grid, 4, "specificity", o.specificity(), c.map(ProofResult.Corrected::specificity));
        row(grid, 6, "ppv", o.ppv(), c.map(ProofResult.Corrected::ppv));
        row(grid, 8, "npv", o.npv(), c.map(ProofResult.Corrected::npv));
        row(grid, 10, "auc", o.auc(), c.map(ProofResult.Corrected::auc));
        return grid;
    }

    private static void row(GridPane grid, int at, String key, Estimate left, Optional<Estimate> right) {
        Label name = new Label(Words.of(key));
        name.getStyleClass().add(Style.STRONG);
        GridPane.setMargin(name, new Insets(12, 0, 12, 0));
        grid.add(name, 0, at);
        figure(grid, at, 1, key + "-observed", left, false);
        right.ifPresent(e -> figure(grid, at, 4, key + "-corrected", e, true));
        if (right.isEmpty()) {
            Label dash = new Label("–");
            dash.getStyleClass().add(Style.FIGURE);
            grid.add(dash, 4, at);
        }
        Region rule = new Region();
        rule.getStyleClass().add(Style.RULE);
        grid.add(rule, 0, at + 1, 7, 1);
    }

    private static void figure(GridPane grid, int row, int column, String id, Estimate estimate, boolean corrected) {
        Label value = new Label(Words.share(estimate.value()));
        value.setId("proof-" + id);
        value.getStyleClass().add(Style.FIGURE);
        value.setMinWidth(Region.USE_PREF_SIZE);
        GridPane.setHalignment(value, HPos.RIGHT);
        grid.add(value, column, row);
        String text = estimate.value().isEmpty() || estimate.interval().isEmpty()
                ? estimate.why().orElse("")
                : Words.interval(estimate);
        Label interval = new Label(text + "\n" + Words.of("n", Words.count(estimate.n())));
        interval.setId("proof-" + id + "-interval");
        interval.getStyleClass().addAll(Style.SMALL, Style.SECOND);
        interval.setWrapText(estimate.interval().isEmpty());
        interval.setMinHeight(Region.USE_PREF_SIZE);
        grid.add(interval, column + 1, row, estimate.interval().isEmpty() ? 2 : 1, 1);
        if (estimate.interval().isPresent()) {
            IntervalBar bar = new IntervalBar(0, 1);
            bar.setMinWidth(36);
            bar.setPrefWidth(80);
            bar.show(estimate);
            if (!corrected) {
                bar.setOpacity(0.75);
            }
            GridPane.setValignment(bar, VPos.CENTER);
            GridPane.setMargin(bar, ROOM_FOR_DOT);
            grid.add(bar, column + 2, row);
        }
    }

    private static Region caution(ProofResult result, long drawn) {
        long sound = result.byScore().stream()
                .filter(s -> s.score() < result.question().cut())
                .mapToLong(ProofResult.AtScore::scored)
                .sum();
        long lifted = result.counts().fn() + result.counts().tn();
        if (result.corrected().isEmpty()) {
            Caution missing = new Caution(result.whyNotCorrected());
            missing.setId("proof-not-corrected");
            return missing;
        }
        if (lifted == sound && result.counts().lifted() == result.scored()) {
            return new Note(Words.of("all.lifted"));
        }
        Caution caution = new Caution(
                Words.of("caution.strong", Words.count(lifted), Words.count(sound)),
                Words.of("caution.rest") + (drawn > 0 ? Words.of("caution.drawn", Words.count(drawn)) : ""));
        caution.setId("proof-assumption");
        return caution;
    }

    // By lesion

    private GridPane byLesion(ProofResult result) {
        GridPane grid = new GridPane();
        grid.setHgap(10);
        grid.add(head("lesion.head"), 0, 0, 2, 1);
        grid.add(small("lesion.lame"), 2, 0, 2, 1);
        ColumnConstraints code = new ColumnConstraints(46);
        ColumnConstraints name = new ColumnConstraints();
        name.setHgrow(Priority.ALWAYS);
        ColumnConstraints of = new ColumnConstraints();
        of.setMinWidth(84);
        ColumnConstraints bar = new ColumnConstraints(60, 120, 120);
        grid.getColumnConstraints().addAll(code, name, of, bar);
        int row = 1;
        boolean anyOther = false;
        List<ProofResult.OfLesion> lesions = result.byLesion().stream()
                .sorted(java.util.Comparator.comparing(ProofResult.OfLesion::inSet)
                        .reversed()
                        .thenComparing(java.util.Comparator.comparingLong(ProofResult.OfLesion::n)
                                .reversed()))
                .toList();
        for (ProofResult.OfLesion lesion : lesions) {
            Label first = new Label(lesion.lesion());
            first.getStyleClass().add(Style.STRONG);
            Label second = new Label(
                    Lesions.byCode(lesion.lesion()).map(Lesion::shortName).orElse(Words.of("lesion.unknown"))
                            + (lesion.inSet() ? "" : "*"));
            anyOther |= !lesion.inSet();
            long lame = Math.round(lesion.sensitivity() * lesion.n());
            Label count = opens(
                    Words.of("of", Words.count(lame), Words.count(lesion.n())),
                    Words.of("list.lesion", lesion.lesion()),
                    o -> o.isLifted() && o.codes().contains(lesion.lesion()));
            count.setId("proof-lesion-" + lesion.lesion());
            grid.add(first, 0, row);
            grid.add(second, 1, row);
            grid.add(count, 2, row);
            int here = row;
            lesion.sensitivityInterval().ifPresent(i -> grid.add(bar(lesion.sensitivity(), i, lesion.n()), 3, here));
            Region rule = new Region();
            rule.getStyleClass().add(Style.RULE);
            grid.add(rule, 0, row + 1, 4, 1);
            for (Label label : List.of(first, second)) {
                GridPane.setMargin(label, new Insets(5, 0, 5, 0));
            }
            row += 2;
        }
        if (lesions.isEmpty()) {
            grid.add(new Label(Words.of("lesion.none")), 0, row++, 4, 1);
        }
        Label foot = new Label(anyOther ? Words.of("lesion.foot") : Words.of("lesion.foot.plain"));
        foot.getStyleClass().addAll(Style.SMALL, Style.SECOND);
        foot.setWrapText(true);
        grid.add(foot, 0, row, 4, 1);
        return grid;
    }

    private static IntervalBar bar(double value, Interval interval, long n) {
        IntervalBar bar = new IntervalBar(0, 1);
        bar.reference(0.5);
        bar.show(Estimate.of(value, interval.low(), interval.high(), n, ""));
        return bar;
    }

    // By leg, score to lift

    private VBox byLeg(ProofResult result) {
        GridPane grid = new GridPane();
        grid.setHgap(8);
        grid.setVgap(4);
        List<Leg> legs = List.of(Leg.LF, Leg.RF, Leg.LH, Leg.RH);
        grid.add(small("leg.scored"), 0, 0);
        long same = 0;
        long all = 0;
        for (int i = 0; i < legs.size(); i++) {
            grid.add(new LegChip(legs.get(i)), i + 1, 0);
            grid.add(new LegChip(legs.get(i)), 0, i + 1);
            for (int j = 0; j < legs.size(); j++) {
                Leg scored = legs.get(i);
                Leg found = legs.get(j);
                long n = result.byLeg().stream()
                        .filter(p -> p.scored() == scored && p.found() == found)
                        .mapToLong(ProofResult.LegPair::n)
                        .sum();
                all += n;
                same += i == j ? n : 0;
                Label cell = n == 0
                        ? new Label("0")
                        : opens(
                                Words.count(n),
                                Words.of("list.leg", scored.name(), found.name()),
                                o -> o.isLifted()
                                        && o.legs().contains(scored)
                                        && o.lesionLegs().contains(found));
                cell.setId("proof-leg-" + scored + "-" + found);
                if (i == j) {
                    cell.getStyleClass().add(Style.STRONG);
                }
                cell.setMinWidth(30);
                cell.setAlignment(javafx.geometry.Pos.CENTER);
                GridPane.setHalignment(cell, HPos.CENTER);
                grid.add(cell, j + 1, i + 1);
            }
        }
        if (all == 0) {
            Label none = new Label(Words.of("leg.none"));
            none.setWrapText(true);
            return new VBox(6, head("leg.head"), none);
        }
        Interval interval = Proportions.wilson(same, all, result.question().level());
        Label words = new Label(Words.of(
                "leg.words",
                Words.count(same),
                Words.count(all),
                Math.round(100.0 * same / all),
                Math.round(100 * interval.low()),
                Math.round(100 * interval.high())));
        words.setWrapText(true);
        words.getStyleClass().add(Style.SMALL);
        return new VBox(6, head("leg.head"), grid, words);
    }

    private static VBox lag(ProofResult result, boolean dark) {
        Charts.Chart chart = new Charts.Chart(92);
        chart.setId("proof-lag");
        Charts.lags(chart, result, dark);
        Label words = new Label(Words.of(
                "lag.words",
                Words.count(Charts.soon(result)),
                Words.count(result.counts().lifted())));
        words.getStyleClass().add(Style.SMALL);
        return new VBox(4, head("lag.head"), words, chart);
    }

    private Label opens(String text, String title, Predicate<Observation> which) {
        Label label = new Label(text);
        label.getStyleClass().add(Style.OPENS);
        label.setMinWidth(Region.USE_PREF_SIZE);
        label.setOnMouseClicked(e -> opens.accept(title, which));
        return label;
    }

    private static Label head(String key) {
        Label label = new Label(Words.of(key));
        label.getStyleClass().add(Style.HEAD);
        return label;
    }

    private static Label small(String key) {
        Label label = new Label(Words.of(key));
        label.getStyleClass().addAll(Style.SMALL, Style.STRONG);
        return label;
    }
}
