package levelback.player.trim;

import java.util.function.DoubleConsumer;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import levelback.player.theme.Style;

/**
 * Measures the screen against a bank card, so that 20 mm are 20 mm. A bank card is 85.60 mm wide and 53.98 mm high
 * (ISO/IEC 7810, size ID-1).
 */
final class MeasureScreen extends VBox {

    static final double CARD_WIDE_MM = 85.60;
    static final double CARD_HIGH_MM = 53.98;

    private final Region card = new Region();
    private double pxPerMm;

    MeasureScreen(TrimWords words, double startPxPerMm, DoubleConsumer measured, Runnable stop) {
        pxPerMm = startPxPerMm;
        double key = 20 * 96 / 25.4;
        getStyleClass().addAll("trim-measure", Style.SHEET);
        setAlignment(Pos.CENTER);
        setSpacing(16);
        Label how = CowColumn.styled(new Label(words.text("measure.how")), "trim-chute-first");
        how.setWrapText(true);
        card.getStyleClass().add("trim-measure-card");
        HBox keys = new HBox(
                12,
                new ChuteKey(key, words.text("measure.smaller"), "", "", () -> grow(-1)).named("measure-smaller"),
                new ChuteKey(key, words.text("measure.larger"), "", "", () -> grow(1)).named("measure-larger"),
                new ChuteKey(key, words.text("measure.stop"), "", "Esc", stop).named("measure-stop"),
                new ChuteKey(key, words.text("measure.fits"), "", "Enter", () -> measured.accept(pxPerMm))
                        .named("measure-fits")
                        .styled(Style.KEY_MAIN));
        keys.setAlignment(Pos.CENTER);
        keys.getChildren().forEach(k -> ((Region) k).setPrefWidth(170));
        getChildren().setAll(how, card, keys);
        grow(0);
    }

    /** Makes the box larger or smaller by steps of 2 px in its width. */
    void grow(int steps) {
        double wide = Math.max(120, pxPerMm * CARD_WIDE_MM + 2 * steps);
        pxPerMm = wide / CARD_WIDE_MM;
        double high = pxPerMm * CARD_HIGH_MM;
        card.setMinSize(wide, high);
        card.setPrefSize(wide, high);
        card.setMaxSize(wide, high);
    }

    double pxPerMm() {
        return pxPerMm;
    }
}
