package levelback.player.score;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.geometry.Pos;
import javafx.scene.Group;
import javafx.scene.control.Button;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.StackPane;
import javafx.scene.shape.SVGPath;
import levelback.player.theme.KeyCap;
import levelback.player.theme.LegChip;
import levelback.player.theme.Style;
import levelback.scoring.value.Leg;

/** Her four feet from above, as keys: E R over D F. The chosen one is filled and ringed. */
final class FeetKeys extends GridPane {

    private static final String LEFT_CLAW = "M0.8 12.5 V6.6 Q0.8 0.6 4 0.6 Q5.4 0.6 5.4 3 V12.5 Z";
    private static final String RIGHT_CLAW = "M11.2 12.5 V6.6 Q11.2 0.6 8 0.6 Q6.6 0.6 6.6 3 V12.5 Z";
    private static final double LARGER = 3.1;

    private final Map<Leg, Group> claws = new EnumMap<>(Leg.class);
    private final Map<Leg, Button> keys = new EnumMap<>(Leg.class);

    FeetKeys(Consumer<Leg> choose) {
        setHgap(4);
        setVgap(6);
        SVGPath head = new SVGPath();
        head.setContent("M6 0 L12 8 H0 Z");
        head.getStyleClass().add("lb-head-mark");
        StackPane headBox = new StackPane(head);
        add(headBox, 0, 0, 2, 1);
        for (Leg leg : Leg.values()) {
            Group claw = new Group();
            for (String path : new String[] {LEFT_CLAW, RIGHT_CLAW}) {
                SVGPath svg = new SVGPath();
                svg.setContent(path);
                claw.getChildren().add(svg);
            }
            claw.setScaleX(LARGER);
            claw.setScaleY(LARGER);
            StackPane foot = new StackPane(new Group(claw), new LegChip(leg));
            KeyCap cap = Parts.cap(KeySet.cap(leg));
            HBox box = leg.isLeft() ? new HBox(5, cap, foot) : new HBox(5, foot, cap);
            box.setAlignment(Pos.CENTER);
            Button key = new Button();
            key.setGraphic(box);
            key.getStyleClass().addAll(Style.KEY, Style.KEY_PLAIN);
            key.setStyle("-fx-padding: 0;");
            key.setAccessibleText(leg.name() + ", " + KeySet.cap(leg));
            Parts.quiet(key, () -> choose.accept(leg));
            key.setId("score-leg-" + leg);
            claws.put(leg, claw);
            keys.put(leg, key);
            add(key, leg.isLeft() ? 0 : 1, leg.isFore() ? 1 : 2);
        }
        show(Optional.empty());
    }

    void show(Optional<Leg> chosen) {
        claws.forEach((leg, claw) -> claw.getChildren().forEach(node -> {
            node.getStyleClass().removeIf(name -> name.startsWith("lb-"));
            node.getStyleClass().add("lb-claw");
            // The claw is drawn three times its size; the line must not be.
            node.setStyle("-fx-stroke-width: 0.35;");
            if (chosen.equals(Optional.of(leg))) {
                node.getStyleClass()
                        .addAll("lb-claw-first", "lb-claw-" + leg.name().toLowerCase(java.util.Locale.ROOT));
                node.setStyle("-fx-stroke-width: 0.8;");
            }
        }));
        keys.forEach((leg, key) -> key.setAccessibleText(leg.name()
                + ", "
                + KeySet.cap(leg)
                + (chosen.equals(Optional.of(leg)) ? ", " + Words.of("chosen") : "")));
    }
}
