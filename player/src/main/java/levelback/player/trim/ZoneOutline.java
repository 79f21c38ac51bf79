package levelback.player.trim;

import java.util.List;

/**
 * A zone with its outline.
 *
 * @param where which zone of which claw
 * @param outline its corners in order, closed by itself
 */
record ZoneOutline(ClawZone where, List<Spot> outline) {

    ZoneOutline {
        outline = List.copyOf(outline);
    }

    /** Whether a point lies in the zone (even-odd rule). */
    boolean holds(double x, double y) {
        boolean inside = false;
        for (int i = 0, j = outline.size() - 1; i < outline.size(); j = i++) {
            Spot a = outline.get(i);
            Spot b = outline.get(j);
            if ((a.y() > y) != (b.y() > y) && x < (b.x() - a.x()) * (y - a.y()) / (b.y() - a.y()) + a.x()) {
                inside = !inside;
            }
        }
        return inside;
    }

    /** The centre of its area, where its number stands. */
    Spot middle() {
        double area = 0;
        double x = 0;
        double y = 0;
        for (int i = 0, j = outline.size() - 1; i < outline.size(); j = i++) {
            Spot a = outline.get(j);
            Spot b = outline.get(i);
            double cross = a.x() * b.y() - b.x() * a.y();
            area += cross;
            x += (a.x() + b.x()) * cross;
            y += (a.y() + b.y()) * cross;
        }
        return new Spot(x / (3 * area), y / (3 * area));
    }

    /** Side of the largest upright square in the zone, found on a grid of 1 unit, to half a unit. */
    double squarePx() {
        double minX = outline.stream().mapToDouble(Spot::x).min().orElse(0);
        double maxX = outline.stream().mapToDouble(Spot::x).max().orElse(0);
        double minY = outline.stream().mapToDouble(Spot::y).min().orElse(0);
        double maxY = outline.stream().mapToDouble(Spot::y).max().orElse(0);
        double best = 0;
        for (double y = minY + .01; y < maxY - best; y++) {
            for (double x = minX + .01; x < maxX - best; x++) {
                while (rimInside(x, y, best + .5)) {
                    best += .5;
                }
            }
        }
        return best;
    }

    private boolean rimInside(double x, double y, double side) {
        for (int i = 0; i <= 12; i++) {
            double d = side * i / 12;
            if (!holds(x + d, y) || !holds(x + d, y + side) || !holds(x, y + d) || !holds(x + side, y + d)) {
                return false;
            }
        }
        return true;
    }
}
