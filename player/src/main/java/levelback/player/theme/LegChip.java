package levelback.player.theme;

import java.util.Locale;
import javafx.scene.control.Label;
import levelback.scoring.value.Leg;

/** The letters of a leg on its colour; the square corner is where her foot is, seen from above. 28 × 19 px. */
public final class LegChip extends Label {
    private final Leg leg;

    public LegChip(Leg leg) {
        super(leg.name());
        this.leg = leg;
        getStyleClass().addAll("lb-leg", "lb-leg-" + leg.name().toLowerCase(Locale.ROOT));
        setMinSize(USE_PREF_SIZE, USE_PREF_SIZE);
    }

    public Leg leg() {
        return leg;
    }
}
