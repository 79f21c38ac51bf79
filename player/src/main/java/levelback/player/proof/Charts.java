package levelback.player.proof;

import java.util.List;
import java.util.function.BiConsumer;
import java.util.stream.Collectors;
import javafx.geometry.VPos;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.layout.Region;
import javafx.scene.text.TextAlignment;
import levelback.player.theme.Role;
import levelback.player.theme.Theme;
import levelback.scoring.proof.ProofResult;
import levelback.scoring.proof.Proportions;
import levelback.scoring.scale.GaitScale;
import levelback.scoring.value.Interval;

/** The three small charts of the page, each drawn on a Canvas that fits its space. */
final class Charts {

    /** Days within which a lame cow should be lifted, by trade target (common practice). */
    private static final int TARGET_DAYS = 2;

    private Charts() {}

    /** A Canvas that fits its space and is drawn anew at every change of size. */
    static final class Chart extends Region {
        private final Canvas canvas = new Canvas();
        private BiConsumer<GraphicsContext, Chart> drawing = (g, c) -> {};

        Chart(double height) {
            getChildren().add(canvas);
            setMinHeight(height);
            setPrefHeight(height);
        }

        void draw(BiConsumer<GraphicsContext, Chart> with) {
            drawing = with;
            redraw();
        }

        @Override
        protected void layoutChildren() {
            if (canvas.getWidth() != getWidth() || canvas.getHeight() != getHeight()) {
                canvas.setWidth(getWidth());
                canvas.setHeight(getHeight());
                redraw();
            }
        }

        private void redraw() {
            GraphicsContext g = canvas.getGraphicsContext2D();
            g.clearRect(0, 0, canvas.getWidth(), canvas.getHeight());
            g.setTextBaseline(VPos.CENTER);
            g.setTextAlign(TextAlignment.LEFT);
            g.setLineDashes();
            g.setFont(Theme.font(Theme.Weight.TEXT, 11));
            if (canvas.getWidth() > 60 && canvas.getHeight() > 60) {
                drawing.accept(g, this);
            }
        }
    }

    /** Each cut as a point, the lifted alone (dashed, hollow) and corrected (solid, tiles' colours). */
    static void roc(Chart chart, ProofResult result, GaitScale scale, boolean dark) {
        chart.draw((g, c) -> {
            double left = 40;
            double size = Math.min(c.getWidth() - left - 10, c.getHeight() - 44);
            double top = 6;
            g.setStroke(Theme.colour(Role.EDGE, dark));
            g.setLineWidth(1);
            g.strokeRect(left + 0.5, top + 0.5, size, size);
            g.setStroke(Theme.colour(Role.RULE, dark));
            g.strokeLine(left, top + size, left + size, top);
            g.setFill(Theme.colour(Role.INK, dark));
            g.setTextAlign(TextAlignment.RIGHT);
            g.fillText("1", left - 5, top + 4);
            g.fillText("0", left - 5, top + size);
            g.setTextAlign(TextAlignment.CENTER);
            g.fillText("0", left, top + size + 10);
            g.fillText("1", left + size, top + size + 10);
            g.fillText(Words.of("roc.x"), left + size / 2, top + size + 12);
            g.save();
            g.translate(12, top + size / 2);
            g.rotate(-90);
            g.fillText(Words.of("roc.y"), 0, 0);
            g.restore();
            g.setTextAlign(TextAlignment.LEFT);
            g.setFill(Theme.colour(Role.INK2, dark));
            g.fillText(Words.of("roc.key"), left, top + size + 28);
            curve(g, result.cuts(), false, left, top, size, scale, dark);
            curve(g, result.cuts(), true, left, top, size, scale, dark);
        });
        chart.setAccessibleText(Words.of("roc.head")
                + result.cuts().stream()
                        .map(at -> Words.of(
                                "roc.said",
                                Words.level(at.cut()),
                                Words.share(at.sensitivity().value()),
                                Words.share(at.specificity().value()),
                                Words.share(at.correctedSensitivity()),
                                Words.share(at.correctedSpecificity())))
                        .collect(Collectors.joining()));
    }

    private static void curve(
            GraphicsContext g,
            List<ProofResult.AtCut> cuts,
            boolean corrected,
            double left,
            double top,
            double size,
            GaitScale scale,
            boolean dark) {
        List<ProofResult.AtCut> there = cuts.stream()
                .filter(at -> corrected
                        ? at.correctedSensitivity().isPresent()
                                && at.correctedSpecificity().isPresent()
                        : at.sensitivity().value().isPresent()
                                && at.specificity().value().isPresent())
                .toList();
        if (there.isEmpty()) {
            return;
        }
        g.setStroke(Theme.colour(corrected ? Role.INK : Role.EDGE, dark));
        g.setLineWidth(corrected ? 2 : 1.4);
        g.setLineDashes(corrected ? new double[0] : new double[] {4, 3});
        double x = left + size;
        double y = top;
        for (ProofResult.AtCut at : there) {
            double nextX = left + size * (1 - specificity(at, corrected));
            double nextY = top + size * (1 - sensitivity(at, corrected));
            g.strokeLine(x, y, nextX, nextY);
            x = nextX;
            y = nextY;
        }
        g.strokeLine(x, y, left, top + size);
        g.setLineDashes();
        for (ProofResult.AtCut at : there) {
            double px = left + size * (1 - specificity(at, corrected));
            double py = top + size * (1 - sensitivity(at, corrected));
            double level = Math.max(scale.lowest(), Math.min(scale.highest(), at.cut()));
            if (corrected) {
                g.setFill(Theme.ramp(scale, level, dark));
                g.fillRect(px - 8, py - 8, 16, 16);
                g.setStroke(Theme.colour(Role.S_EDGE, dark));
                g.setLineWidth(1.2);
                g.strokeRect(px - 8, py - 8, 16, 16);
                g.setFill(Theme.onRamp(scale, level, dark));
            } else {
                g.setFill(Theme.colour(Role.SHEET, dark));
                g.fillOval(px - 7, py - 7, 14, 14);
                g.setStroke(Theme.colour(Role.EDGE, dark));
                g.strokeOval(px - 7, py - 7, 14, 14);
                g.setFill(Theme.colour(Role.INK, dark));
            }
            g.setTextAlign(TextAlignment.CENTER);
            g.setFont(Theme.font(Theme.Weight.HEAD, 11));
            g.fillText(Words.level(at.cut()), px, py);
            g.setFont(Theme.font(Theme.Weight.TEXT, 11));
            g.setTextAlign(TextAlignment.LEFT);
        }
    }

    private static double sensitivity(ProofResult.AtCut at, boolean corrected) {
        return (corrected ? at.correctedSensitivity() : at.sensitivity().value()).orElse(0);
    }

    private static double specificity(ProofResult.AtCut at, boolean corrected) {
        return (corrected ? at.correctedSpecificity() : at.specificity().value()).orElse(0);
    }

    /** Share of the lifted with a lesion, by score, with Wilson's interval. */
    static void shares(Chart chart, ProofResult result, GaitScale scale, boolean dark) {
        chart.draw((g, c) -> {
            double left = 34;
            double right = c.getWidth() - 12;
            double top = 8;
            double bottom = c.getHeight() - 24;
            g.setTextAlign(TextAlignment.RIGHT);
            for (int percent = 0; percent <= 100; percent += 50) {
                double y = Math.rint(bottom - (bottom - top) * percent / 100) + 0.5;
                g.setStroke(Theme.colour(Role.RULE, dark));
                g.setLineWidth(1);
                g.strokeLine(left, y, right, y);
                g.setFill(Theme.colour(Role.INK2, dark));
                g.fillText(String.valueOf(percent), left - 5, y);
            }
            int n = result.byScore().size();
            for (int i = 0; i < n; i++) {
                ProofResult.AtScore at = result.byScore().get(i);
                double x = left + (right - left) * (i + 0.4) / n;
                g.setTextAlign(TextAlignment.CENTER);
                g.setFill(Theme.colour(Role.INK, dark));
                g.setFont(Theme.font(Theme.Weight.HEAD, 12));
                g.fillText(Words.level(at.score()), x, bottom + 12);
                if (at.lifted() == 0) {
                    g.fillText("–", x, (top + bottom) / 2);
                    continue;
                }
                double share = (double) at.withLesion() / at.lifted();
                Interval interval = Proportions.wilson(
                        at.withLesion(), at.lifted(), result.question().level());
                g.setStroke(Theme.colour(Role.INK, dark));
                g.setLineWidth(3);
                g.strokeLine(x, y(interval.low(), top, bottom), x, y(interval.high(), top, bottom));
                double level = Math.max(scale.lowest(), Math.min(scale.highest(), at.score()));
                g.setFill(Theme.ramp(scale, level, dark));
                g.setLineWidth(1.4);
                g.fillOval(x - 5, y(share, top, bottom) - 5, 10, 10);
                g.strokeOval(x - 5, y(share, top, bottom) - 5, 10, 10);
                g.setTextAlign(TextAlignment.LEFT);
                g.setFill(Theme.colour(Role.INK, dark));
                g.fillText(String.valueOf(Math.round(100 * share)), x + 9, y(share, top, bottom));
            }
        });
        chart.setAccessibleText(Words.of("shares.head"));
    }

    private static double y(double share, double top, double bottom) {
        return bottom - (bottom - top) * share;
    }

    /** Days from score to first lift. */
    static void lags(Chart chart, ProofResult result, boolean dark) {
        chart.draw((g, c) -> {
            int from = result.question().windowFromDays();
            int to = result.question().windowToDays();
            long most = result.lagDays().stream()
                    .mapToLong(ProofResult.Lag::n)
                    .max()
                    .orElse(1);
            double bottom = c.getHeight() - 18;
            double step = (c.getWidth() - 10) / (to - from + 1.0);
            for (ProofResult.Lag lag : result.lagDays()) {
                double high = (bottom - 14) * lag.n() / most;
                double x = 4 + (lag.days() - from) * step;
                boolean soon = lag.days() <= TARGET_DAYS;
                g.setFill(Theme.colour(soon ? Role.GATE : Role.SHEET, dark));
                g.fillRect(x, bottom - high, Math.max(2, step - 3), high);
                g.setStroke(Theme.colour(soon ? Role.GATE : Role.EDGE, dark));
                g.setLineWidth(1);
                g.strokeRect(x + 0.5, bottom - high + 0.5, Math.max(2, step - 3) - 1, Math.max(0.5, high - 1));
            }
            g.setStroke(Theme.colour(Role.INK, dark));
            g.strokeLine(0, bottom + 0.5, c.getWidth(), bottom + 0.5);
            g.setFill(Theme.colour(Role.INK, dark));
            g.setTextAlign(TextAlignment.CENTER);
            for (int day : new int[] {from, from + (to - from) / 2, to}) {
                g.fillText(String.valueOf(day), 4 + (day - from) * step + step / 2 - 1, bottom + 10);
            }
        });
        chart.setAccessibleText(Words.of("lag.head")
                + result.lagDays().stream()
                        .map(lag -> Words.of("lag.said", lag.days(), Words.count(lag.n())))
                        .collect(Collectors.joining()));
    }

    /** How many were lifted within the target, for the words beside the chart. */
    static long soon(ProofResult result) {
        return result.lagDays().stream()
                .filter(lag -> lag.days() <= TARGET_DAYS)
                .mapToLong(ProofResult.Lag::n)
                .sum();
    }
}
