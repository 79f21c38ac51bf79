package levelback.player.trim;

import javafx.scene.layout.Region;
import javafx.scene.shape.Rectangle;

/** One to three bars for mild, moderate, severe. Not a score tile: a tile is a gait score and nothing else. */
final class SeverityBars extends Region {

    SeverityBars(int level, double barPx) {
        double gap = Math.max(2, barPx / 3);
        double high = barPx * 2.6;
        for (int i = 0; i < 3; i++) {
            double h = high * (i + 1) / 3;
            Rectangle bar = new Rectangle(i * (barPx + gap), high - h, barPx, h);
            bar.getStyleClass().add(i < level ? "trim-bar-full" : "trim-bar-empty");
            bar.setManaged(false);
            getChildren().add(bar);
        }
        double wide = 3 * barPx + 2 * gap;
        setMinSize(wide, high);
        setPrefSize(wide, high);
        setMaxSize(wide, high);
        setMouseTransparent(true);
    }
}
