package levelback.player.proof;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.DoubleConsumer;
import javafx.geometry.Point2D;
import javafx.geometry.VPos;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.layout.Region;
import javafx.scene.paint.Color;
import javafx.scene.text.TextAlignment;
import levelback.player.theme.Role;
import levelback.player.theme.Theme;
import levelback.scoring.proof.ProofResult;
import levelback.scoring.scale.GaitScale;
import org.jspecify.annotations.Nullable;

/**
 * Every cow-visit as a mark: filled where a lesion was found, open where none was, a slash where nobody looked. Rows are
 * scores, lamest on top; the cut lies between them and can be clicked or dragged. Marks, and the blocks chosen by key,
 * open their cows.
 */
final class MarksView extends Region {

    /** The three columns. */
    enum Column {
        LESION,
        CLEAN,
        NEVER
    }

    /** One block: a score and a column. */
    record Block(double score, Column column) {}

    private record Row(ProofResult.AtScore at, double top, double height) {}

    private static final int MANY = 3000;
    private static final double HEAD = 26;
    private static final double LEFT = 96;
    private static final double LEAST_ROW = 44;
    private static final double CUT_GRAB = 12;

    private final Canvas canvas = new Canvas();
    private final List<Row> rows = new ArrayList<>();
    private @Nullable ProofResult result;
    private @Nullable GaitScale scale;
    private boolean dark;
    private Optional<Block> chosen = Optional.empty();
    private Consumer<Block> onOpen = block -> {};
    private DoubleConsumer onCut = cut -> {};
    private double pitch;
    private int worth = 1;
    private double columnClean;
    private double columnNever;
    private int perLine;
    private int perLineNever;

    MarksView() {
        getChildren().add(canvas);
        setMinHeight(180);
        setFocusTraversable(true);
        setId("proof-marks");
        setOnMouseClicked(e -> {
            requestFocus();
            clicked(e.getX(), e.getY());
        });
        setOnMouseDragged(e -> cutAt(e.getY()));
    }

    void onOpen(Consumer<Block> opens) {
        onOpen = opens;
    }

    void onCut(DoubleConsumer cuts) {
        onCut = cuts;
    }

    /** How many cow-visits one mark stands for. */
    int worth() {
        return worth;
    }

    void show(ProofResult newResult, GaitScale newScale, boolean nowDark) {
        result = newResult;
        scale = newScale;
        dark = nowDark;
        draw();
    }

    /** Moves the chosen block sideways, through all blocks in reading order. */
    void moveChoice(int by) {
        if (result == null) {
            return;
        }
        List<Block> all = new ArrayList<>();
        for (int i = result.byScore().size() - 1; i >= 0; i--) {
            for (Column column : Column.values()) {
                all.add(new Block(result.byScore().get(i).score(), column));
            }
        }
        if (all.isEmpty()) {
            return;
        }
        int now = chosen.map(all::indexOf).orElse(by > 0 ? -1 : all.size());
        chosen = Optional.of(all.get(Math.floorMod(now + by, all.size())));
        draw();
    }

    /** The block that Enter opens. */
    Optional<Block> chosen() {
        return chosen;
    }

    static long count(ProofResult.AtScore at, Column column) {
        return switch (column) {
            case LESION -> at.withLesion();
            case CLEAN -> at.lifted() - at.withLesion();
            case NEVER -> at.scored() - at.lifted();
        };
    }

    @Override
    protected void layoutChildren() {
        if (canvas.getWidth() != getWidth() || canvas.getHeight() != getHeight()) {
            canvas.setWidth(getWidth());
            canvas.setHeight(getHeight());
            draw();
        }
    }

    private void clicked(double x, double y) {
        for (Row row : rows) {
            if (y >= row.top() && y < row.top() + row.height()) {
                if (Math.abs(y - cutY()) < CUT_GRAB / 2) {
                    return;
                }
                if (x < LEFT) {
                    onCut.accept(row.at().score());
                    return;
                }
                Column column = x < columnClean ? Column.LESION : x < columnNever ? Column.CLEAN : Column.NEVER;
                if (count(row.at(), column) > 0) {
                    chosen = Optional.of(new Block(row.at().score(), column));
                    onOpen.accept(new Block(row.at().score(), column));
                }
                return;
            }
        }
    }

    /** The cut goes to the gap between rows that lies nearest. */
    private void cutAt(double y) {
        Row best = null;
        for (Row row : rows.subList(0, Math.max(0, rows.size() - 1))) {
            if (best == null || Math.abs(row.top() + row.height() - y) < Math.abs(best.top() + best.height() - y)) {
                best = row;
            }
        }
        if (best != null
                && result != null
                && best.at().score() != result.question().cut()) {
            onCut.accept(best.at().score());
        }
    }

    private double cutY() {
        double y = HEAD;
        for (Row row : rows) {
            if (result != null && row.at().score() >= result.question().cut()) {
                y = row.top() + row.height();
            }
        }
        return y;
    }

    private void draw() {
        GraphicsContext g = canvas.getGraphicsContext2D();
        g.clearRect(0, 0, canvas.getWidth(), canvas.getHeight());
        rows.clear();
        if (result == null || scale == null || canvas.getWidth() < 200) {
            return;
        }
        measure(result);
        g.setTextBaseline(VPos.CENTER);
        g.setFont(Theme.font(Theme.Weight.HEAD, 12));
        g.setFill(colour(Role.INK));
        g.fillText(Words.of("marks.lesion"), LEFT, HEAD / 2);
        g.fillText(Words.of("marks.clean"), columnClean, HEAD / 2);
        g.fillText(Words.of("marks.never"), columnNever, HEAD / 2);
        StringBuilder said = new StringBuilder();
        for (Row row : rows) {
            drawRow(g, row, scale);
            said.append(Words.of(
                            "marks.said",
                            Words.level(row.at().score()),
                            count(row.at(), Column.LESION),
                            count(row.at(), Column.CLEAN),
                            count(row.at(), Column.NEVER)))
                    .append(' ');
        }
        drawCut(g, result);
        setAccessibleText(said.toString().strip());
    }

    /** The largest marks that fit. */
    private void measure(ProofResult of) {
        double width = canvas.getWidth();
        double height = canvas.getHeight() - HEAD - 4;
        double usable = width - LEFT - 130;
        columnClean = LEFT + usable * 0.31 + 42;
        columnNever = columnClean + usable * 0.31 + 42;
        worth = of.scored() > MANY ? 10 : 1;
        while (true) {
            for (pitch = 9; pitch >= 5; pitch -= 0.5) {
                perLine = Math.max(1, (int) (usable * 0.31 / pitch));
                perLineNever = Math.max(1, (int) (usable * 0.38 / pitch));
                double need = 0;
                for (ProofResult.AtScore at : of.byScore()) {
                    need += rowHeight(at);
                }
                if (need <= height) {
                    place(of, height - need);
                    return;
                }
            }
            worth = worth == 1 ? 2 : worth == 2 ? 5 : worth == 5 ? 10 : worth * 10;
        }
    }

    private double rowHeight(ProofResult.AtScore at) {
        long lines = Math.max(
                Math.max(lines(count(at, Column.LESION), perLine), lines(count(at, Column.CLEAN), perLine)),
                lines(count(at, Column.NEVER), perLineNever));
        return Math.max(Math.min(LEAST_ROW, canvas.getHeight() / (rowCount() + 1.0)), lines * pitch + 10);
    }

    private int rowCount() {
        return result == null ? 1 : Math.max(1, result.byScore().size());
    }

    private long lines(long n, int perRow) {
        long marks = (n + worth - 1) / worth;
        return (marks + perRow - 1) / perRow;
    }

    private void place(ProofResult of, double spare) {
        double top = HEAD;
        double extra = Math.min(14, spare / rowCount());
        for (int i = of.byScore().size() - 1; i >= 0; i--) {
            double high = rowHeight(of.byScore().get(i)) + extra;
            rows.add(new Row(of.byScore().get(i), top, high));
            top += high;
        }
    }

    private void drawRow(GraphicsContext g, Row row, GaitScale on) {
        double score = row.at().score();
        g.setStroke(colour(Role.RULE));
        g.setLineWidth(1);
        double bottom = Math.rint(row.top() + row.height()) + 0.5;
        g.strokeLine(0, bottom, canvas.getWidth(), bottom);
        tile(g, on, score, 12, row.top() + 6);
        g.setFill(colour(Role.INK));
        g.setFont(Theme.font(Theme.Weight.HEAD, 12));
        g.fillText(Words.count(row.at().scored()), 46, row.top() + 14);
        g.setFont(Theme.font(Theme.Weight.TEXT, 11));
        g.setFill(colour(Role.INK2));
        g.fillText(Words.of("scored"), 46, row.top() + 28);
        for (Column column : Column.values()) {
            double x = column == Column.LESION ? LEFT : column == Column.CLEAN ? columnClean : columnNever;
            int perRow = column == Column.NEVER ? perLineNever : perLine;
            block(g, row, column, x, perRow, on);
        }
    }

    private void block(GraphicsContext g, Row row, Column column, double x, int perRow, GaitScale on) {
        long n = count(row.at(), column);
        long marks = (n + worth - 1) / worth;
        double size = pitch * 0.68;
        if (chosen.isPresent() && chosen.get().equals(new Block(row.at().score(), column))) {
            g.setFill(colour(Role.GATE_WASH));
            double wide = perRow * pitch + 44;
            g.fillRect(x - 4, row.top() + 1, wide, row.height() - 2);
            g.setStroke(colour(Role.GATE));
            g.setLineWidth(2);
            g.strokeRect(x - 4, row.top() + 2, wide, row.height() - 4);
        }
        Color ink = column == Column.LESION
                ? Theme.ramp(on, on.highest(), dark)
                : colour(column == Column.CLEAN ? Role.INK : Role.EDGE);
        g.setFill(ink);
        g.setStroke(ink);
        g.setLineWidth(1.1);
        for (long i = 0; i < marks; i++) {
            double left = x + (i % perRow) * pitch;
            long line = i / perRow;
            double top = row.top() + 6 + line * pitch;
            switch (column) {
                case LESION -> g.fillOval(left, top, size, size);
                case CLEAN -> g.strokeOval(left, top, size, size);
                case NEVER -> g.strokeLine(left, top + size, left + size, top);
            }
        }
        g.setFill(colour(Role.INK));
        g.setFont(Theme.font(Theme.Weight.HEAD, 13));
        g.fillText(Words.count(n), x + Math.min(marks, perRow) * pitch + 5, row.top() + 11);
    }

    private void tile(GraphicsContext g, GaitScale on, double score, double x, double y) {
        double clamped = Math.max(on.lowest(), Math.min(on.highest(), score));
        double fraction = (clamped - on.lowest()) / (on.highest() - on.lowest());
        double unit = 1.3;
        double wide = 20 * unit;
        double high = 23 * unit;
        double wall = 7.8 * unit;
        g.beginPath();
        g.moveTo(x, y + high);
        g.lineTo(x, y + wall);
        // Her back: the same half ellipse as on the score tile, as two Bezier quarters.
        double rise = wall * fraction;
        double k = 0.5523;
        g.bezierCurveTo(x, y + wall - rise * k, x + wide / 2 * (1 - k), y + wall - rise, x + wide / 2, y + wall - rise);
        g.bezierCurveTo(x + wide / 2 * (1 + k), y + wall - rise, x + wide, y + wall - rise * k, x + wide, y + wall);
        g.lineTo(x + wide, y + high);
        g.closePath();
        g.setFill(Theme.ramp(on, clamped, dark));
        g.fill();
        g.setStroke(colour(Role.S_EDGE));
        g.setLineWidth(1.5);
        g.stroke();
        g.setFill(Theme.onRamp(on, clamped, dark));
        String digit = Words.level(score);
        g.setFont(Theme.font(Theme.Weight.STRONG, digit.length() > 1 ? 12 : 17));
        g.setTextAlign(TextAlignment.CENTER);
        g.fillText(digit, x + wide / 2, y + 15.6 * unit);
        g.setTextAlign(TextAlignment.LEFT);
    }

    private void drawCut(GraphicsContext g, ProofResult of) {
        double y = Math.rint(cutY());
        g.setStroke(colour(Role.INK));
        g.setLineWidth(2.5);
        g.strokeLine(0, y, canvas.getWidth(), y);
        String text = Words.of("marks.cut", Words.level(of.question().cut()));
        g.setFont(Theme.font(Theme.Weight.HEAD, 12));
        javafx.scene.text.Text probe = new javafx.scene.text.Text(text);
        probe.setFont(g.getFont());
        double wide = probe.getLayoutBounds().getWidth() + 18;
        double top = y < HEAD + 24 ? y : y - 22;
        g.setFill(colour(Role.INK));
        g.fillRect(canvas.getWidth() - wide, top, wide, 22);
        g.setFill(colour(Role.SHEET));
        g.fillText(text, canvas.getWidth() - wide + 9, top + 11);
    }

    private Color colour(Role role) {
        return Theme.colour(role, dark);
    }

    /** Where a block is drawn, for a test that clicks it. */
    Point2D middleOf(Block block) {
        for (Row row : rows) {
            if (row.at().score() == block.score()) {
                double x = block.column() == Column.LESION
                        ? LEFT
                        : block.column() == Column.CLEAN ? columnClean : columnNever;
                return new Point2D(x + 6, row.top() + 10);
            }
        }
        throw new IllegalArgumentException(String.format(Locale.ROOT, "no row for %s", block));
    }
}
