package levelback.player.theme;

import java.util.List;
import java.util.OptionalDouble;
import javafx.scene.layout.Region;
import javafx.scene.shape.Circle;
import javafx.scene.shape.Line;
import javafx.scene.shape.Polyline;
import levelback.scoring.scale.GaitScale;

/** A cow's last scores, oldest left, as joined dots on a hairline for each level. 82 × 24 px. */
public final class LevelLine extends Region {

    private static final double WIDE = 82;
    private static final double HIGH = 24;

    /** @param levels oldest first; a visit without a score is a gap */
    public LevelLine(GaitScale scale, List<OptionalDouble> levels) {
        getStyleClass().add("lb-level-line");
        setMinSize(WIDE, HIGH);
        setPrefSize(WIDE, HIGH);
        setMaxSize(WIDE, HIGH);
        double top = 4;
        double floor = HIGH - 4;
        int lines = scale.levels().size();
        for (int line = 0; line < lines; line++) {
            double y = floor - (floor - top) * line / (lines - 1);
            Line hair = new Line(0, y, WIDE, y);
            hair.getStyleClass().add("lb-hairline");
            hair.setManaged(false);
            getChildren().add(hair);
        }
        Polyline joined = new Polyline();
        joined.getStyleClass().add("lb-level-joined");
        joined.setManaged(false);
        getChildren().add(joined);
        double step = levels.size() > 1 ? (WIDE - 14) / (levels.size() - 1) : 0;
        StringBuilder words = new StringBuilder();
        for (int i = 0; i < levels.size(); i++) {
            OptionalDouble level = levels.get(i);
            words.append(i == 0 ? "" : ", ");
            if (level.isEmpty()) {
                words.append("not scored");
                continue;
            }
            double x = 7 + step * i;
            double y = floor - (floor - top) * Theme.fraction(scale, level.getAsDouble());
            joined.getPoints().addAll(x, y);
            Circle dot = new Circle(x, y, 3.2);
            dot.setStyle("-fx-fill: -lb-ramp-" + Theme.rampName(scale, level.getAsDouble()) + ";");
            dot.getStyleClass().add("lb-level-dot");
            dot.setManaged(false);
            getChildren().add(dot);
            words.append(level.getAsDouble());
        }
        setAccessibleText(words.toString());
    }
}
