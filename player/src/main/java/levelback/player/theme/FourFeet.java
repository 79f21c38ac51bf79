package levelback.player.theme;

import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import javafx.scene.Group;
import javafx.scene.layout.Region;
import javafx.scene.shape.SVGPath;
import javafx.scene.transform.Scale;
import levelback.scoring.value.Leg;

/** Her four feet from above, head up: the foot to lift first is filled, the next is ringed. */
public final class FourFeet extends Region {

    private static final double UNITS = 28;
    private static final String LEFT_CLAW = "M0.6 12 V6.5 Q0.6 0.6 3.6 0.6 Q5 0.6 5 3 V12 Z";
    private static final String RIGHT_CLAW = "M10.4 12 V6.5 Q10.4 0.6 7.4 0.6 Q6 0.6 6 3 V12 Z";

    private final Map<Leg, Group> feet = new EnumMap<>(Leg.class);

    /**
     * @param first the foot to lift first
     * @param next the one after it
     * @param sizePx height and width, usually 25 to 30
     */
    public FourFeet(Optional<Leg> first, Optional<Leg> next, double sizePx) {
        getStyleClass().add("lb-four-feet");
        Group all = new Group();
        SVGPath head = new SVGPath();
        head.setContent("M14 0 L16 2.6 H12 Z");
        head.getStyleClass().add("lb-head-mark");
        all.getChildren().add(head);
        for (Leg leg : Leg.values()) {
            Group foot = new Group();
            for (String claw : new String[] {LEFT_CLAW, RIGHT_CLAW}) {
                SVGPath path = new SVGPath();
                path.setContent(claw);
                foot.getChildren().add(path);
            }
            foot.setTranslateX(leg.isLeft() ? 1 : 16);
            foot.setTranslateY(leg.isFore() ? 0.5 : 14.8);
            feet.put(leg, foot);
            all.getChildren().add(foot);
        }
        all.setManaged(false);
        all.getTransforms().add(new Scale(sizePx / UNITS, sizePx / UNITS));
        getChildren().add(all);
        setMinSize(sizePx, sizePx);
        setPrefSize(sizePx, sizePx);
        setMaxSize(sizePx, sizePx);
        show(first, next);
    }

    /** Shows other feet. */
    public void show(Optional<Leg> first, Optional<Leg> next) {
        feet.forEach((leg, foot) -> foot.getChildren().forEach(claw -> {
            claw.getStyleClass().removeIf(name -> name.startsWith("lb-"));
            claw.getStyleClass().add("lb-claw");
            if (first.filter(leg::equals).isPresent()) {
                claw.getStyleClass()
                        .addAll("lb-claw-first", "lb-claw-" + leg.name().toLowerCase(Locale.ROOT));
            } else if (next.filter(leg::equals).isPresent()) {
                claw.getStyleClass().add("lb-claw-next");
            }
        }));
        setAccessibleText(first.map(leg -> leg.name() + " first").orElse("no foot named")
                + next.map(leg -> ", then " + leg.name()).orElse(""));
    }
}
