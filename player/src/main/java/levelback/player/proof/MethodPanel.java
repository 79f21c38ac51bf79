package levelback.player.proof;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import javafx.geometry.Insets;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import levelback.player.theme.Keys;
import levelback.player.theme.Style;
import levelback.scoring.proof.ProofResult;
import levelback.scoring.value.Estimate;

/** What became of every score row, and how each figure was made. */
final class MethodPanel extends VBox {

    MethodPanel(ProofResult result, Runnable close) {
        getStyleClass().add(Style.SHEET);
        setPadding(new Insets(10, 14, 12, 16));
        setSpacing(10);
        Label title = head("method.head");
        Region gap = new Region();
        HBox.setHgrow(gap, Priority.ALWAYS);
        Button shut = Keys.button(Words.of("list.close"), "Esc");
        shut.setOnAction(e -> close.run());
        GridPane flow = new GridPane();
        flow.setHgap(16);
        flow.setVgap(4);
        int row = 0;
        for (ProofResult.Step step : result.flow()) {
            Label n = new Label(Words.count(step.n()));
            n.getStyleClass().add(Style.STRONG);
            n.setId("proof-flow-" + step.step());
            javafx.scene.layout.GridPane.setHalignment(n, javafx.geometry.HPos.RIGHT);
            flow.addRow(row++, n, new Label(Words.of("flow." + step.step())));
        }
        getChildren().addAll(new HBox(10, title, gap, shut), flow, head("method.how"));
        for (String line : lines(result)) {
            Label label = new Label(line);
            label.setWrapText(true);
            label.setMinHeight(Region.USE_PREF_SIZE);
            getChildren().add(label);
        }
    }

    private static Set<String> lines(ProofResult result) {
        ProofResult.Observed o = result.observed();
        Set<String> lines = new LinkedHashSet<>();
        lines.add(Words.of("method.level", Math.round(100 * result.question().level())));
        add(lines, "method.shares", o.sensitivity());
        add(lines, "method.auc", o.auc());
        result.corrected().ifPresent(c -> add(lines, "method.corrected", c.sensitivity()));
        result.corrected().ifPresent(c -> lines.add(c.assumption()));
        result.weighted().ifPresent(w -> {
            for (var figure : List.of(
                    java.util.Map.entry("sensitivity", w.sensitivity()),
                    java.util.Map.entry("specificity", w.specificity()),
                    java.util.Map.entry("ppv", w.ppv()),
                    java.util.Map.entry("npv", w.npv()))) {
                lines.add(Words.of(
                        "method.weighted",
                        Words.of(figure.getKey()),
                        Words.share(figure.getValue().value()),
                        Words.interval(figure.getValue())));
            }
            add(lines, "method.weighted.how", w.sensitivity());
        });
        if (result.trend().pValue().isPresent()) {
            lines.add(Words.of(
                    "method.trend",
                    String.format("%.1f", result.trend().statistic().orElse(0)),
                    String.format("%.2g", result.trend().pValue().getAsDouble())));
        }
        lines.add(Words.of("method.refused"));
        return lines;
    }

    private static void add(Set<String> lines, String key, Estimate from) {
        lines.add(Words.of(key, from.method()));
    }

    private static Label head(String key) {
        Label label = new Label(Words.of(key));
        label.getStyleClass().add(Style.HEAD);
        return label;
    }
}
