package levelback.player.trim;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import javafx.geometry.VPos;
import javafx.scene.Node;
import javafx.scene.input.MouseButton;
import javafx.scene.layout.Region;
import javafx.scene.shape.Ellipse;
import javafx.scene.shape.Line;
import javafx.scene.shape.LineTo;
import javafx.scene.shape.MoveTo;
import javafx.scene.shape.Path;
import javafx.scene.shape.Polygon;
import javafx.scene.shape.Rectangle;
import javafx.scene.text.Text;
import levelback.scoring.foot.Claw;
import levelback.scoring.value.Leg;

/**
 * Draws the foot from below and tells which zone was touched. A touch counts when it is let go over the zone it began on.
 * Colour is never alone: a zone always carries its number, an earlier finding is hatched, a block is a dashed box with its
 * name, the chosen zone has an edge of 4 px, and a zone that is only the usual one is dotted.
 */
final class FootMapView extends Region {

    /**
     * What to draw.
     *
     * @param found zones with a finding on the card, 1 to 3 for how bad, 0 where not said
     * @param unconfirmed zones that are only the usual ones
     * @param earlier zones of findings on earlier cards
     * @param blocked claws with a block on
     */
    record Picture(
            Leg leg,
            boolean toesUp,
            Optional<ClawZone> chosen,
            Map<ClawZone, Integer> found,
            Set<ClawZone> unconfirmed,
            Set<ClawZone> earlier,
            Set<Claw> blocked) {}

    private final TrimWords words;
    private final FootMap.Layer layer;
    private final Consumer<ClawZone> touched;
    private final double labelPx;
    private Picture picture = new Picture(Leg.RH, false, Optional.empty(), Map.of(), Set.of(), Set.of(), Set.of());
    private List<ZoneOutline> placed = List.of();
    private Optional<ClawZone> pressed = Optional.empty();

    FootMapView(TrimWords words, FootMap.Layer layer, double labelPx, Consumer<ClawZone> touched) {
        this.words = words;
        this.layer = layer;
        this.labelPx = labelPx;
        this.touched = touched;
        getStyleClass().add("trim-map");
        setFocusTraversable(true);
        setOnMousePressed(e -> {
            requestFocus();
            pressed = e.getButton() == MouseButton.PRIMARY ? zoneAt(e.getX(), e.getY()) : Optional.empty();
        });
        setOnMouseReleased(e -> {
            Optional<ClawZone> released = zoneAt(e.getX(), e.getY());
            if (released.isPresent() && released.equals(pressed)) {
                this.touched.accept(released.get());
            }
            pressed = Optional.empty();
        });
        focusedProperty().addListener((o, was, is) -> requestLayout());
    }

    void show(Picture now) {
        picture = now;
        setAccessibleText(words.text(
                "map.accessible", now.leg(), now.chosen().map(words::place).orElse(words.text("map.none"))));
        requestLayout();
    }

    /** The zone under a point of this region, px. */
    Optional<ClawZone> zoneAt(double x, double y) {
        return FootMap.at(placed(), x, y - top());
    }

    /** Where a zone's number stands in this region, px. */
    Spot middleOf(ClawZone zone) {
        Spot m = placed().stream()
                .filter(z -> z.where().equals(zone))
                .findFirst()
                .orElseThrow()
                .middle();
        return new Spot(m.x(), m.y() + top());
    }

    /** Side of the largest upright square that fits in every zone, px: what a finger has at the tightest place. */
    double smallestZonePx() {
        return placed().stream().mapToDouble(ZoneOutline::squarePx).min().orElse(0);
    }

    private List<ZoneOutline> placed() {
        return FootMap.of(layer)
                .placed(picture.leg(), picture.toesUp(), getWidth(), Math.max(1, getHeight() - top() - bottom()));
    }

    /** Room for the words above; none where the heel is not drawn. */
    private double top() {
        return layer == FootMap.Layer.SOLE_LOW && !picture.toesUp() ? 4 : labelPx + 10;
    }

    private double bottom() {
        return layer == FootMap.Layer.SOLE_LOW && picture.toesUp() ? 4 : labelPx + 10;
    }

    @Override
    protected void layoutChildren() {
        placed = placed();
        List<Node> nodes = new ArrayList<>();
        decor(nodes);
        for (ZoneOutline zone : placed) {
            draw(nodes, zone);
        }
        // Chosen last, so that its edge lies over its neighbours.
        for (ZoneOutline zone : placed) {
            ring(nodes, zone);
        }
        picture.blocked().forEach(claw -> block(nodes, claw));
        labels(nodes);
        nodes.forEach(node -> {
            node.setManaged(false);
            node.setMouseTransparent(true);
        });
        getChildren().setAll(nodes);
    }

    private void draw(List<Node> nodes, ZoneOutline zone) {
        Polygon area = polygon(zone);
        area.getStyleClass().add("trim-zone");
        int number = zone.where().zone();
        boolean wall = number == 0 || number > 6;
        Integer found = picture.found().get(zone.where());
        String digit = "trim-digit";
        if (found != null) {
            area.getStyleClass().add("trim-found-" + found);
            digit = "trim-digit-" + found;
        } else if (wall) {
            area.getStyleClass().add("trim-wall");
        }
        nodes.add(area);
        if (found == null && picture.earlier().contains(zone.where())) {
            nodes.add(hatch(zone));
        }
        Spot at = zone.middle();
        Text text = new Text(Integer.toString(number));
        text.getStyleClass().addAll("trim-number", digit);
        text.setStyle("-fx-font-size: " + Math.max(13, Math.min(labelPx + 4, labelPx * 1.4)) + "px;");
        text.applyCss();
        text.setTextOrigin(VPos.CENTER);
        text.setX(at.x() - text.getLayoutBounds().getWidth() / 2);
        text.setY(at.y() + top());
        if (found == null && picture.earlier().contains(zone.where())) {
            // The number must be read on the hatching.
            Rectangle clear = new Rectangle(
                    text.getX() - 4,
                    at.y() + top() - labelPx * .8,
                    text.getLayoutBounds().getWidth() + 8,
                    labelPx * 1.6);
            clear.getStyleClass().add(wall ? "trim-clear-wall" : "trim-clear");
            nodes.add(clear);
        }
        nodes.add(text);
    }

    private void ring(List<Node> nodes, ZoneOutline zone) {
        boolean chosen = picture.chosen().filter(zone.where()::equals).isPresent();
        boolean unconfirmed = picture.unconfirmed().contains(zone.where());
        if (!chosen && !unconfirmed) {
            return;
        }
        Polygon edge = polygon(zone);
        edge.getStyleClass().add(unconfirmed ? "trim-unconfirmed" : "trim-chosen");
        nodes.add(edge);
    }

    private Node hatch(ZoneOutline zone) {
        Path lines = new Path();
        lines.getStyleClass().add("trim-hatch");
        double minX = zone.outline().stream().mapToDouble(Spot::x).min().orElse(0);
        double maxX = zone.outline().stream().mapToDouble(Spot::x).max().orElse(0);
        double minY = zone.outline().stream().mapToDouble(Spot::y).min().orElse(0) + top();
        double maxY = zone.outline().stream().mapToDouble(Spot::y).max().orElse(0) + top();
        double high = maxY - minY;
        for (double x = minX - high; x < maxX; x += 7) {
            lines.getElements().addAll(new MoveTo(x, maxY), new LineTo(x + high, minY));
        }
        lines.setClip(polygon(zone));
        return lines;
    }

    /** A block lies under the middle of the sole, towards the cleft, and is set back from the toe. */
    private void block(List<Node> nodes, Claw claw) {
        Optional<ZoneOutline> four = outline(new ClawZone(claw, 4));
        Optional<ZoneOutline> five = outline(new ClawZone(claw, 5));
        if (four.isEmpty() || five.isEmpty()) {
            return;
        }
        double minX = Math.min(left(four.get()), left(five.get()));
        double maxX = Math.max(right(four.get()), right(five.get()));
        double a = four.get().middle().y() + top();
        double b = five.get().middle().y() + top();
        double half = Math.abs(b - a) / 2;
        double y0 = Math.min(a, b) + half * .55;
        double y1 = Math.max(a, b) + half * .95;
        if (picture.toesUp()) {
            y0 = Math.min(a, b) - half * .95;
            y1 = Math.max(a, b) - half * .55;
        }
        Rectangle box = new Rectangle(minX + 3, y0, maxX - minX - 2, y1 - y0);
        box.setArcWidth(10);
        box.setArcHeight(10);
        box.getStyleClass().add("trim-block");
        Text text = new Text(words.text("map.block"));
        text.getStyleClass().add("trim-block-text");
        text.applyCss();
        double width = text.getLayoutBounds().getWidth();
        double x = minX + (maxX - minX - width) / 2;
        double y = picture.toesUp() ? y0 + 16 : y1 - 8;
        Rectangle ground = new Rectangle(x - 3, y - 12, width + 6, 16);
        ground.getStyleClass().add("trim-clear");
        text.setX(x);
        text.setY(y);
        nodes.addAll(List.of(box, ground, text));
    }

    private void labels(List<Node> nodes) {
        boolean up = picture.toesUp();
        double bottomY = getHeight() - labelPx * .55;
        if (layer != FootMap.Layer.SOLE_LOW) {
            label(nodes, words.text("map.heel"), getWidth() / 2, up ? bottomY : labelPx * .6);
        }
        boolean outerRight = !picture.leg().isLeft() != up;
        String left = words.text(outerRight ? "map.inner" : "map.outer");
        String right = words.text(outerRight ? "map.outer" : "map.inner");
        double y = up ? labelPx * .6 : bottomY;
        label(nodes, left, getWidth() * .26, y);
        label(nodes, right, getWidth() * .74, y);
        if (layer == FootMap.Layer.WALLS) {
            label(nodes, words.text("map.toe"), getWidth() / 2, y);
        }
    }

    private void label(List<Node> nodes, String words, double middleX, double y) {
        Text text = new Text(words);
        text.getStyleClass().add("trim-map-label");
        text.setStyle("-fx-font-size: " + labelPx + "px;");
        text.applyCss();
        text.setTextOrigin(VPos.CENTER);
        text.setX(middleX - text.getLayoutBounds().getWidth() / 2);
        text.setY(y);
        nodes.add(text);
    }

    /** Dewclaws, which are not zones; and a focus ring, as two hairlines, where the map has the keyboard. */
    private void decor(List<Node> nodes) {
        if (layer == FootMap.Layer.WHOLE) {
            double y = picture.toesUp() ? getHeight() - bottom() - 26 : top() + 26;
            for (double x : new double[] {.105, .895}) {
                Ellipse dewclaw = new Ellipse(getWidth() * x, y, 20, 22);
                dewclaw.getStyleClass().add("trim-dewclaw");
                Text name = new Text(words.text("map.dewclaw"));
                name.getStyleClass().add("trim-dewclaw-text");
                name.applyCss();
                name.setX(getWidth() * x - name.getLayoutBounds().getWidth() / 2);
                name.setY(picture.toesUp() ? y - 28 : y + 36);
                nodes.add(dewclaw);
                nodes.add(name);
            }
        }
        if (isFocused()) {
            Line ring = new Line(0, getHeight(), getWidth(), getHeight());
            ring.getStyleClass().add("trim-focus");
            nodes.add(ring);
        }
    }

    private Optional<ZoneOutline> outline(ClawZone where) {
        return placed.stream().filter(z -> z.where().equals(where)).findFirst();
    }

    private static double left(ZoneOutline zone) {
        return zone.outline().stream().mapToDouble(Spot::x).min().orElse(0);
    }

    private static double right(ZoneOutline zone) {
        return zone.outline().stream().mapToDouble(Spot::x).max().orElse(0);
    }

    private Polygon polygon(ZoneOutline zone) {
        double[] points = new double[zone.outline().size() * 2];
        for (int i = 0; i < zone.outline().size(); i++) {
            points[2 * i] = zone.outline().get(i).x();
            points[2 * i + 1] = zone.outline().get(i).y() + top();
        }
        return new Polygon(points);
    }
}
