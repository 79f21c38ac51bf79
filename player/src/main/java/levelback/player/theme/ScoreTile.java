package levelback.player.theme;

import java.text.NumberFormat;
import java.util.OptionalDouble;
import javafx.geometry.VPos;
import javafx.scene.layout.Region;
import javafx.scene.shape.ArcTo;
import javafx.scene.shape.ClosePath;
import javafx.scene.shape.LineTo;
import javafx.scene.shape.MoveTo;
import javafx.scene.shape.Path;
import javafx.scene.text.Text;
import javafx.scene.text.TextAlignment;
import levelback.scoring.scale.GaitScale;

/**
 * A gait score: the top edge is her back, level at the sound end and arched at the lame end; digit, shape and ink agree.
 * Unscored is dashed and empty. For gait scores alone.
 */
public final class ScoreTile extends Region {

    private static final double UNITS_WIDE = 20;
    private static final double UNITS_HIGH = 23;
    private static final double DOME_UNITS = 7.8;

    private final GaitScale scale;
    private final double unit;
    private final Path outline = new Path();
    private final Text digit = new Text();

    /**
     * @param level the score; empty while unscored
     * @param widthPx width of the tile, usually 18 to 58
     */
    public ScoreTile(GaitScale scale, OptionalDouble level, double widthPx) {
        this.scale = scale;
        unit = widthPx / UNITS_WIDE;
        getStyleClass().add("lb-score-tile");
        outline.getStyleClass().add("lb-score-outline");
        outline.setStrokeWidth(widthPx < 24 ? 1.2 : 1.6);
        digit.setTextOrigin(VPos.CENTER);
        digit.setTextAlignment(TextAlignment.CENTER);
        digit.setManaged(false);
        outline.setManaged(false);
        getChildren().addAll(outline, digit);
        setMinSize(widthPx, unit * UNITS_HIGH);
        setPrefSize(widthPx, unit * UNITS_HIGH);
        setMaxSize(widthPx, unit * UNITS_HIGH);
        setLevel(level);
    }

    /** Shows another score. */
    public void setLevel(OptionalDouble level) {
        double fraction = level.isPresent() ? Theme.fraction(scale, level.getAsDouble()) : 0;
        double inset = outline.getStrokeWidth() / 2;
        double left = inset;
        double right = UNITS_WIDE * unit - inset;
        double foot = UNITS_HIGH * unit - inset;
        double wall = DOME_UNITS * unit + inset;
        outline.getElements()
                .setAll(
                        new MoveTo(left, foot),
                        new LineTo(left, wall),
                        new ArcTo((right - left) / 2, DOME_UNITS * unit * fraction, 0, right, wall, false, true),
                        new LineTo(right, foot),
                        new ClosePath());
        if (level.isEmpty()) {
            outline.setStyle("-fx-fill: transparent; -fx-stroke: -lb-edge; -fx-stroke-dash-array: 4 3;");
            digit.setText("");
            setAccessibleText("not scored");
            return;
        }
        String name = Theme.rampName(scale, level.getAsDouble());
        outline.setStyle("-fx-fill: -lb-ramp-" + name + "; -fx-stroke: -lb-s-edge;");
        digit.setStyle("-fx-fill: -lb-digit-" + name + ";");
        NumberFormat format = NumberFormat.getNumberInstance();
        format.setMaximumFractionDigits(1);
        digit.setText(format.format(level.getAsDouble()));
        setAccessibleText("score " + digit.getText());
        boolean wide = digit.getText().length() > 1;
        digit.setFont(Theme.font(Theme.Weight.STRONG, (wide ? 9.5 : 13.6) * unit));
        double width = digit.getLayoutBounds().getWidth();
        digit.setX((UNITS_WIDE * unit - width) / 2);
        digit.setY(15.6 * unit);
    }
}
