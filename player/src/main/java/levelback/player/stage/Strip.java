package levelback.player.stage;

import java.text.NumberFormat;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.ResourceBundle;
import java.util.function.IntConsumer;
import java.util.function.LongConsumer;
import javafx.geometry.VPos;
import javafx.scene.AccessibleRole;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.input.MouseEvent;
import javafx.scene.layout.Region;
import javafx.scene.paint.Color;
import javafx.scene.text.Font;
import javafx.scene.text.Text;
import javafx.scene.text.TextAlignment;
import levelback.player.theme.Role;
import levelback.player.theme.Theme;
import levelback.scoring.value.Leg;
import org.jspecify.annotations.Nullable;

/**
 * The time band under a picture: ruler, one line for each leg with its stances as bars and the partner's as a dashed ghost,
 * head and back, remarks, and the playhead. A click or a drag goes there; a click on a remark goes to its frame. JavaFX
 * thread only.
 */
public final class Strip extends Region {

    private static final ResourceBundle WORDS = ResourceBundle.getBundle("levelback.player.stage.Strip");
    private static final double GUTTER = 84;
    private static final double RIGHT = 12;
    private static final double RULER = 26;
    private static final double REMARK_HIGH = 22;
    private static final List<Leg> LINES = List.of(Leg.LF, Leg.RF, Leg.LH, Leg.RH);
    private static final double LEAST_BAND = 4;
    private static final double MICROS = 1e6;

    private final Canvas canvas = new Canvas();

    /** Never seen; the stylesheet gives it the page's colour, and so tells the canvas which theme is on. */
    private final Label themeProbe = new Label();

    private final List<Spot> spots = new ArrayList<>();
    private final List<Band> bands = new ArrayList<>();
    private final Tooltip words = new Tooltip();

    private @Nullable StripContent content;
    private long playheadUs;
    private long loopFromUs;
    private long loopToUs;
    private boolean dark;
    private LongConsumer onTime = time -> {};
    private IntConsumer onFrame = frame -> {};
    private Font small = Theme.font(Theme.Weight.TEXT, 12);
    private Font strong = Theme.font(Theme.Weight.HEAD, 12);

    /** A remark as it was drawn. */
    private record Spot(double left, double top, double right, StripContent.Remark remark) {}

    /** A damaged span as it was drawn. */
    private record Band(double left, double right, String text) {}

    public Strip() {
        getStyleClass().add("lb-strip");
        setAccessibleRole(AccessibleRole.SLIDER);
        setFocusTraversable(true);
        canvas.setManaged(false);
        canvas.setMouseTransparent(true);
        themeProbe.setStyle("-fx-text-fill: -lb-sheet;");
        themeProbe.setManaged(false);
        themeProbe.setVisible(false);
        themeProbe.textFillProperty().addListener((o, was, is) -> {
            dark = is instanceof Color sheet && sheet.getBrightness() < 0.5;
            draw();
        });
        getChildren().addAll(themeProbe, canvas);
        setMinHeight(150);
        setOnMousePressed(this::press);
        setOnMouseDragged(e -> go(e.getX()));
        setOnMouseMoved(this::tell);
        focusedProperty().addListener((o, was, is) -> draw());
    }

    /** Called with the moment that was clicked or dragged to. */
    public void setOnTime(LongConsumer listener) {
        onTime = listener;
    }

    /** Called with the frame of a remark that was clicked. */
    public void setOnFrame(IntConsumer listener) {
        onFrame = listener;
    }

    /** Shows another span, or nothing. */
    public void show(@Nullable StripContent shown) {
        content = shown;
        draw();
    }

    /** Moves the playhead. */
    public void setPlayhead(long timeUs) {
        if (timeUs != playheadUs) {
            playheadUs = timeUs;
            draw();
        }
    }

    /** Draws the loop bracket; an empty span draws none. */
    public void setLoop(long fromUs, long toUs) {
        loopFromUs = fromUs;
        loopToUs = toUs;
        draw();
    }

    private void press(MouseEvent event) {
        requestFocus();
        for (Spot spot : spots) {
            if (event.getX() >= spot.left()
                    && event.getX() <= spot.right()
                    && event.getY() >= spot.top()
                    && event.getY() <= spot.top() + REMARK_HIGH) {
                onFrame.accept(spot.remark().frame());
                return;
            }
        }
        go(event.getX());
    }

    private void go(double x) {
        if (content != null) {
            onTime.accept(scale(content).timeUs(x));
        }
    }

    private StripScale scale(StripContent of) {
        return new StripScale(of.fromUs(), of.toUs(), GUTTER, Math.max(GUTTER + 1, getWidth() - RIGHT));
    }

    @Override
    protected void layoutChildren() {
        canvas.setWidth(getWidth());
        canvas.setHeight(getHeight());
        draw();
    }

    @Override
    protected double computePrefHeight(double width) {
        return 246;
    }

    private Color colour(Role role) {
        return Theme.colour(role, dark);
    }

    private void draw() {
        GraphicsContext g = canvas.getGraphicsContext2D();
        double width = canvas.getWidth();
        double height = canvas.getHeight();
        spots.clear();
        g.clearRect(0, 0, width, height);
        if (width < GUTTER + 40 || height < 60) {
            return;
        }
        g.setFill(colour(Role.SHEET));
        g.fillRect(0, 0, width, height);
        double lowest = height - 6;
        double remarkTop = lowest - 34;
        double curveTop = remarkTop - 40;
        double line = (curveTop - RULER) / LINES.size();
        g.setTextBaseline(VPos.CENTER);
        for (int i = 0; i < LINES.size(); i++) {
            chip(g, LINES.get(i), 12, RULER + line * (i + 0.5) - 10, 32, 20);
            hair(g, GUTTER, RULER + line * (i + 1), width - RIGHT);
        }
        text(g, WORDS.getString("headBack"), 12, (curveTop + remarkTop) / 2, Role.INK2, small);
        hair(g, GUTTER, remarkTop, width - RIGHT);
        text(g, WORDS.getString("remarks"), 12, (remarkTop + lowest) / 2, Role.INK2, small);
        if (content == null) {
            return;
        }
        StripScale scale = scale(content);
        damage(g, content, scale, lowest);
        ruler(g, content, scale, lowest);
        for (Stance stance : content.stances()) {
            double middle = RULER + line * (LINES.indexOf(stance.leg()) + 0.5);
            stance(g, content, scale, stance, middle, Math.min(24, line - 6));
        }
        if (content.stances().isEmpty()) {
            // On the side where the playhead is not.
            double share = scale.x(playheadUs) > (GUTTER + width) / 2 ? 0.25 : 0.75;
            quiet(g, "noFootfalls", GUTTER + (width - RIGHT - GUTTER) * share, RULER + line * 2);
        }
        if (content.curves().isEmpty()) {
            text(g, "–", GUTTER + 4, (curveTop + remarkTop) / 2, Role.INK3, small);
        }
        for (StripContent.Curve curve : content.curves()) {
            curve(g, curve, scale, curveTop + 6, remarkTop - 6);
        }
        remarks(g, content, scale, remarkTop, lowest);
        loop(g, scale);
        playhead(g, scale, lowest);
        describe(content);
    }

    /** Hatched from the ruler down, a few pixels wide at least, so that one lost picture of thousands is seen. */
    private void damage(GraphicsContext g, StripContent shown, StripScale scale, double lowest) {
        bands.clear();
        double edge = canvas.getWidth() - RIGHT;
        for (StripContent.Damaged span : shown.damage()) {
            if (span.toUs() < shown.fromUs() || span.fromUs() > shown.toUs()) {
                continue;
            }
            double left = Math.max(GUTTER, Math.min(edge - LEAST_BAND, scale.x(span.fromUs())));
            double right = Math.min(edge, Math.max(left + LEAST_BAND, scale.x(span.toUs())));
            g.setFill(colour(Role.STOP_WASH));
            g.fillRect(left, RULER, right - left, lowest - RULER);
            hatch(g, left, RULER, right, lowest, colour(Role.STOP), 1);
            g.setFill(colour(Role.STOP));
            g.fillRect(left, RULER - 3, right - left, 3);
            bands.add(new Band(left, right, span.text()));
        }
    }

    private void tell(MouseEvent event) {
        String said = bands.stream()
                .filter(band -> event.getX() >= band.left() - 2 && event.getX() <= band.right() + 2)
                .map(Band::text)
                .distinct()
                .reduce((one, other) -> one + "\n" + other)
                .orElse("");
        if (said.isEmpty()) {
            Tooltip.uninstall(this, words);
            words.hide();
        } else if (!said.equals(words.getText()) || !words.isShowing()) {
            words.setText(said);
            Tooltip.install(this, words);
        }
    }

    private void ruler(GraphicsContext g, StripContent shown, StripScale scale, double lowest) {
        List<Strides.Stride> strides = Strides.of(shown.stances(), Leg.LH);
        boolean byStride = !strides.isEmpty();
        text(g, WORDS.getString(byStride ? "strides" : "seconds"), 12, RULER / 2, Role.INK2, small);
        g.setStroke(colour(Role.RULE));
        g.setLineWidth(1);
        NumberFormat seconds = NumberFormat.getNumberInstance();
        if (byStride) {
            seconds.setMinimumFractionDigits(2);
            seconds.setMaximumFractionDigits(2);
            for (int i = 0; i < strides.size(); i++) {
                Strides.Stride stride = strides.get(i);
                tick(g, scale.x(stride.fromUs()), lowest);
                tick(g, scale.x(stride.toUs()), lowest);
                String label = (i + 1) + " · " + seconds.format((stride.toUs() - stride.fromUs()) / MICROS) + " s";
                g.setTextAlign(TextAlignment.CENTER);
                text(g, label, scale.x((stride.fromUs() + stride.toUs()) / 2), RULER / 2, Role.INK2, small);
                g.setTextAlign(TextAlignment.LEFT);
            }
            return;
        }
        long step = scale.tickUs();
        seconds.setMaximumFractionDigits(2);
        seconds.setMinimumFractionDigits(step % 1_000_000 == 0 ? 0 : step % 100_000 == 0 ? 1 : 2);
        for (long at = 0; shown.fromUs() + at <= shown.toUs(); at += step) {
            double x = scale.x(shown.fromUs() + at);
            tick(g, x, lowest);
            String label = seconds.format(at / MICROS) + " s";
            if (x + width(label, small) + 4 < canvas.getWidth()) {
                text(g, label, x + 4, RULER / 2, Role.INK2, small);
            }
        }
    }

    private void tick(GraphicsContext g, double x, double lowest) {
        double at = Math.floor(x) + 0.5;
        g.setStroke(colour(Role.RULE));
        g.strokeLine(at, 4, at, lowest);
    }

    private void stance(
            GraphicsContext g, StripContent shown, StripScale scale, Stance stance, double middle, double high) {
        double left = Math.max(GUTTER, scale.x(stance.downUs()));
        double right = Math.min(canvas.getWidth() - RIGHT, scale.x(stance.upUs()));
        if (right <= left) {
            return;
        }
        Optional<Long> ghost = Strides.ghostUs(shown.stances(), stance);
        if (ghost.isPresent()) {
            double end = Math.min(canvas.getWidth() - RIGHT, scale.x(stance.downUs() + ghost.get()));
            g.setStroke(colour(Role.INK2));
            g.setLineWidth(1);
            g.setLineDashes(3, 2);
            g.strokeRect(left - 1.5, middle - high / 2 - 2.5, Math.max(1, end - left) + 3, high + 5);
            g.setLineDashes();
        }
        Color ground = colour(Role.of(stance.leg()));
        g.setFill(stance.confirmed() ? ground : colour(Role.SHEET));
        g.fillRect(left, middle - high / 2, right - left, high);
        if (!stance.confirmed()) {
            hatch(g, left, middle - high / 2, right, middle + high / 2, ground, 3);
        }
        g.setStroke(colour(stance.confirmed() ? Role.LEG_EDGE : Role.INK));
        g.setLineWidth(1);
        g.strokeRect(left + 0.5, middle - high / 2 + 0.5, right - left - 1, high - 1);
        NumberFormat seconds = NumberFormat.getNumberInstance();
        seconds.setMinimumFractionDigits(2);
        seconds.setMaximumFractionDigits(2);
        String label = seconds.format(stance.lengthUs() / MICROS);
        boolean whole = stance.downUs() >= shown.fromUs() && stance.upUs() <= shown.toUs();
        if (whole && right - left > width(label, strong) + 10) {
            g.setTextAlign(TextAlignment.RIGHT);
            if (!stance.confirmed()) {
                double textWidth = width(label, strong);
                g.setFill(colour(Role.SHEET));
                g.fillRect(right - textWidth - 7, middle - 7, textWidth + 4, 14);
            }
            text(g, label, right - 5, middle, stance.confirmed() ? Role.on(stance.leg()) : Role.INK, strong);
            g.setTextAlign(TextAlignment.LEFT);
        }
    }

    private static void hatch(
            GraphicsContext g, double left, double top, double right, double bottom, Color colour, double thick) {
        g.save();
        g.beginPath();
        g.rect(left, top, right - left, bottom - top);
        g.clip();
        g.setStroke(colour);
        g.setLineWidth(thick);
        for (double x = left - (bottom - top); x < right; x += 7) {
            g.strokeLine(x, bottom, x + (bottom - top), top);
        }
        g.restore();
    }

    private void curve(GraphicsContext g, StripContent.Curve curve, StripScale scale, double top, double bottom) {
        double low = curve.points().stream()
                .mapToDouble(StripContent.Point::value)
                .min()
                .orElse(0);
        double high = curve.points().stream()
                .mapToDouble(StripContent.Point::value)
                .max()
                .orElse(1);
        g.setStroke(colour(Role.INK));
        g.setLineWidth(1.4);
        if (curve.dashed()) {
            g.setLineDashes(5, 3);
        }
        g.beginPath();
        boolean begun = false;
        for (StripContent.Point point : curve.points()) {
            double x = scale.x(point.timeUs());
            double y = high > low ? bottom - (bottom - top) * (point.value() - low) / (high - low) : (top + bottom) / 2;
            if (begun) {
                g.lineTo(x, y);
            } else {
                g.moveTo(x, y);
                begun = true;
            }
        }
        g.stroke();
        g.setLineDashes();
    }

    private void remarks(GraphicsContext g, StripContent shown, StripScale scale, double top, double lowest) {
        double y = (top + lowest) / 2 - REMARK_HIGH / 2 + 2;
        double free = GUTTER;
        double edge = canvas.getWidth() - RIGHT;
        int hidden = 0;
        for (StripContent.Remark remark : shown.remarks()) {
            double moment = scale.x(remark.timeUs());
            double wide = width(remark.text(), small) + 12 + (remark.leg().isPresent() ? 32 : 0);
            double left = Math.max(free, Math.min(moment, edge - wide));
            if (left + wide > edge + 0.5) {
                hidden++;
                continue;
            }
            g.setStroke(colour(Role.EDGE));
            g.setLineWidth(1);
            g.strokeLine(moment, top + 1, moment, y);
            if (left > moment + 0.5 || left < moment - wide) {
                g.strokeLine(moment, y, left, y);
            }
            g.setFill(colour(Role.INSET));
            g.fillRect(left, y, wide, REMARK_HIGH);
            g.strokeRect(left + 0.5, y + 0.5, wide - 1, REMARK_HIGH - 1);
            double at = left + 6;
            if (remark.leg().isPresent()) {
                chip(g, remark.leg().get(), left + 4, y + 2, 26, 18);
                at = left + 35;
            }
            text(g, remark.text(), at, y + REMARK_HIGH / 2, Role.INK, small);
            spots.add(new Spot(left, y, left + wide, remark));
            free = left + wide + 4;
        }
        if (hidden > 0) {
            g.setTextAlign(TextAlignment.RIGHT);
            text(g, "+" + hidden, edge + RIGHT - 1, top + 7, Role.INK2, strong);
            g.setTextAlign(TextAlignment.LEFT);
        }
        if (shown.remarks().isEmpty()) {
            text(g, "–", GUTTER + 4, (top + lowest) / 2, Role.INK3, small);
        }
    }

    private void loop(GraphicsContext g, StripScale scale) {
        if (loopToUs <= loopFromUs) {
            return;
        }
        g.setStroke(colour(Role.GATE));
        g.setLineWidth(2.5);
        double left = scale.x(loopFromUs);
        double right = scale.x(loopToUs);
        g.strokePolyline(new double[] {left, left, right, right}, new double[] {28, 22, 22, 28}, 4);
    }

    private void playhead(GraphicsContext g, StripScale scale, double lowest) {
        double x = Math.round(scale.x(Math.max(scale.fromUs(), Math.min(scale.toUs(), playheadUs))));
        g.setStroke(colour(Role.INK));
        g.setLineWidth(2);
        g.strokeLine(x, 22, x, lowest);
        g.setFill(colour(isFocused() ? Role.FOCUS : Role.INK));
        // A hoof from the front: flat above, narrowing to the toe.
        g.fillPolygon(new double[] {x - 6, x + 6, x + 6, x, x - 6}, new double[] {16, 16, 22, 28, 22}, 5);
    }

    private void chip(GraphicsContext g, Leg leg, double x, double y, double wide, double high) {
        g.setFill(colour(Role.of(leg)));
        g.fillRoundRect(x, y, wide, high, 12, 12);
        square(g, leg, x, y, wide, high);
        g.setTextAlign(TextAlignment.CENTER);
        text(g, leg.name(), x + wide / 2, y + high / 2, Role.on(leg), Theme.font(Theme.Weight.STRONG, 12));
        g.setTextAlign(TextAlignment.LEFT);
    }

    /** The one square corner is where her foot is, seen from above. */
    private static void square(GraphicsContext g, Leg leg, double x, double y, double wide, double high) {
        double half = 6;
        g.fillRect(leg.isLeft() ? x : x + wide - half, leg.isFore() ? y : y + high - half, half, half);
    }

    private void hair(GraphicsContext g, double left, double y, double right) {
        g.setStroke(colour(Role.RULE));
        g.setLineWidth(1);
        g.strokeLine(left, Math.floor(y) + 0.5, right, Math.floor(y) + 0.5);
    }

    private void quiet(GraphicsContext g, String key, double x, double y) {
        String words = WORDS.getString(key);
        double wide = width(words, small) + 16;
        g.setFill(colour(Role.SHEET));
        g.fillRect(x - wide / 2, y - 10, wide, 20);
        g.setTextAlign(TextAlignment.CENTER);
        text(g, words, x, y, Role.INK3, small);
        g.setTextAlign(TextAlignment.LEFT);
    }

    private void text(GraphicsContext g, String words, double x, double y, Role role, Font font) {
        g.setFont(font);
        g.setFill(colour(role));
        g.fillText(words, x, y);
    }

    private static double width(String words, Font font) {
        Text measured = new Text(words);
        measured.setFont(font);
        return measured.getLayoutBounds().getWidth();
    }

    private void describe(StripContent shown) {
        NumberFormat seconds = NumberFormat.getNumberInstance();
        seconds.setMaximumFractionDigits(2);
        String at = seconds.format((playheadUs - shown.fromUs()) / MICROS);
        String all = seconds.format((shown.toUs() - shown.fromUs()) / MICROS);
        setAccessibleText(java.text.MessageFormat.format(
                WORDS.getString("accessible"),
                at,
                all,
                shown.remarks().size(),
                shown.stances().size(),
                bands.size()));
    }
}
