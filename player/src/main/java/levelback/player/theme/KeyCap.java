package levelback.player.theme;

import javafx.scene.control.Label;

/** The drawing of a key of the keyboard, beside what it does. */
public final class KeyCap extends Label {

    private static final double NARROWEST_PX = 18;

    public KeyCap(String key) {
        super(key);
        getStyleClass().add("lb-keycap");
        setMinWidth(USE_PREF_SIZE);
        setMouseTransparent(true);
    }

    @Override
    protected double computePrefWidth(double height) {
        return Math.max(NARROWEST_PX, Math.ceil(super.computePrefWidth(height)));
    }
}
