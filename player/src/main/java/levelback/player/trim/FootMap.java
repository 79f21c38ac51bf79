package levelback.player.trim;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import levelback.scoring.foot.Claw;
import levelback.scoring.value.Leg;

/**
 * The foot from below: where each zone of each claw lies. Pure geometry; {@link FootMapView} draws it.
 *
 * <p><b>Which claw is on which side.</b> Think of the cow from above, walking up the page: her left is on the left of the
 * page, so the outer claw of a left foot is its left claw. Looked at from <em>below</em> the page is mirrored: with the toe
 * still up the page, the outer claw of a left foot is now on the right. A trimmer does not see it so: the foot is folded
 * back about the axis that runs across the cow, sole towards him, toe to the ground. That is the view from below turned by
 * half a circle, and a half turn swaps right and left once more: with the <em>toes down</em>, the outer claw of a left foot
 * is on the <b>left</b>, and that of a right foot on the <b>right</b>. The same answer comes from standing behind her: the
 * fold is about the cross axis, so nothing of hers changes sides; her right is on your right, and the outer claw of a right
 * foot is the one further out. Fore and hind feet are folded back alike. <em>Toes up</em> is a half turn of that view,
 * numbers kept upright.
 *
 * <p>The outlines are laid down for a right foot with the toes down: inner claw on the left half, outer claw on the right,
 * each the mirror of the other about the cleft, so that the axial zones 4 5 11 12 face the cleft and the abaxial ones 2 3 7
 * 8 9 face away. Zones after the International Lameness Committee's map (14-lesion consensus, 2008): 0 interdigital skin, 1
 * white line at the toe, 2 and 3 abaxial white line, 4 sole at the bulb (axial), 5 sole, 6 bulb, 7 and 8 outer wall, 9 skin
 * above the coronet, 10 skin at the heel over the cleft, 11 and 12 axial wall; 11 in front of 12 is from memory.
 */
final class FootMap {

    /** What is laid out. */
    enum Layer {
        /** All zones. */
        WHOLE,
        /** Sole, cleft and heel, large, for chute mode. */
        SOLE,
        /** Sole and cleft without the heel, for a low screen in chute mode. */
        SOLE_LOW,
        /** Walls, coronet and heel, large, for chute mode. */
        WALLS
    }

    private static final int STEPS = 16;

    private final double widthUnits;
    private final double heightUnits;
    private final List<ZoneOutline> right;

    private FootMap(double widthUnits, double heightUnits, List<ZoneOutline> right) {
        this.widthUnits = widthUnits;
        this.heightUnits = heightUnits;
        this.right = right;
    }

    /** The map of a layer. */
    static FootMap of(Layer layer) {
        return switch (layer) {
            case WHOLE -> whole();
            case SOLE -> sole(true);
            case SOLE_LOW -> sole(false);
            case WALLS -> walls();
        };
    }

    /**
     * The zones as they lie on the screen.
     *
     * @param leg which foot
     * @param toesUp half a turn from how it lies in the hand
     * @param widthPx width to fill
     * @param heightPx height to fill
     */
    List<ZoneOutline> placed(Leg leg, boolean toesUp, double widthPx, double heightPx) {
        // A left foot is the mirror of a right one; half a turn is a mirror both ways.
        boolean mirrorX = leg.isLeft() != toesUp;
        boolean mirrorY = toesUp;
        List<ZoneOutline> placed = new ArrayList<>();
        for (ZoneOutline zone : right) {
            List<Spot> spots = new ArrayList<>();
            for (Spot spot : zone.outline()) {
                double x = (mirrorX ? -spot.x() : spot.x()) + widthUnits / 2;
                double y = mirrorY ? heightUnits - spot.y() : spot.y();
                spots.add(new Spot(x / widthUnits * widthPx, y / heightUnits * heightPx));
            }
            placed.add(new ZoneOutline(zone.where(), spots));
        }
        return placed;
    }

    /** The zone under a point, if any. */
    static Optional<ClawZone> at(List<ZoneOutline> placed, double x, double y) {
        return placed.stream()
                .filter(zone -> zone.holds(x, y))
                .map(ZoneOutline::where)
                .findFirst();
    }

    /**
     * The next zone in a direction, for the arrow keys: of the zones that lie that way, the one that is nearest, sideways
     * distance counting double.
     *
     * @param dx −1 left, 1 right, 0 neither
     * @param dy −1 up, 1 down, 0 neither
     */
    static Optional<ClawZone> next(List<ZoneOutline> placed, ClawZone from, int dx, int dy) {
        Optional<ZoneOutline> start =
                placed.stream().filter(z -> z.where().equals(from)).findFirst();
        if (start.isEmpty()) {
            return Optional.empty();
        }
        Spot here = start.get().middle();
        ClawZone best = null;
        double bestCost = Double.MAX_VALUE;
        for (ZoneOutline zone : placed) {
            Spot there = zone.middle();
            double along = (there.x() - here.x()) * dx + (there.y() - here.y()) * dy;
            double across = Math.abs((there.x() - here.x()) * dy) + Math.abs((there.y() - here.y()) * dx);
            double cost = along + 2 * across;
            if (!zone.where().equals(from) && along > 1 && along * 1.6 >= across && cost < bestCost) {
                best = zone.where();
                bestCost = cost;
            }
        }
        return Optional.ofNullable(best);
    }

    private static FootMap whole() {
        // Units are px at the smallest middle column; the widths keep a square of 44 px in every zone.
        DoubleUnaryOperator axial = y -> y < 128
                ? 124 - 52 * dome(y, 68, 60)
                : Curve.at(y, 128, 72, 265, 72, 365, 72, 410, 75, 440, 82, 458, 98);
        DoubleUnaryOperator abaxial = y -> y < 128
                ? 124 + 52 * dome(y, 68, 60)
                : Curve.at(y, 128, 176, 215, 178, 265, 177, 315, 171, 365, 156, 410, 135, 440, 115, 458, 98);
        DoubleUnaryOperator line = y -> Curve.at(y, 170, 131, 265, 119, 365, 117);
        DoubleUnaryOperator wall =
                y -> y <= 268 ? 227 : Curve.at(y, 268, 227, 328, 225, 365, 215, 410, 190, 440, 158, 464, 112);
        DoubleUnaryOperator cleft = y -> Curve.at(y, 84, 23, 270, 23, 448, 9);
        List<ZoneOutline> zones = new ArrayList<>();
        both(zones, 6, 68, 170, axial, abaxial);
        both(zones, 4, 170, 265, axial, line);
        both(zones, 3, 170, 265, line, abaxial);
        both(zones, 5, 265, 365, axial, line);
        both(zones, 2, 265, 365, line, abaxial);
        both(zones, 1, 365, 458, axial, abaxial);
        both(zones, 8, 104, 266, y -> Math.max(180, abaxial.applyAsDouble(y) + 2), y -> 227 - 3 * (266 - y) / 162);
        both(zones, 7, 269, 464, y -> y < 458 ? abaxial.applyAsDouble(y) + 2 : 100, wall);
        both(zones, 9, 104, 292, y -> 229 - 3 * (266 - y) / 162, y -> 275);
        both(zones, 12, 122, 266, y -> 25, y -> 70);
        both(zones, 11, 269, 448, y -> 25, y -> 70);
        zones.add(new ZoneOutline(
                new ClawZone(Claw.INTERDIGITAL, 0), strip(84, 448, y -> -cleft.applyAsDouble(y), cleft)));
        zones.add(new ZoneOutline(
                new ClawZone(Claw.INTERDIGITAL, 10), strip(0, 60, y -> -148 - y * .4, y -> 148 + y * .4)));
        return new FootMap(550, 466, zones);
    }

    private static FootMap sole(boolean heel) {
        DoubleUnaryOperator axial =
                y -> y < 150 ? 160 - 116 * dome(y, 86, 64) : Curve.at(y, 150, 44, 430, 44, 480, 48, 508, 62, 522, 96);
        DoubleUnaryOperator abaxial = y -> y < 150
                ? 160 + 114 * dome(y, 86, 64)
                : Curve.at(y, 150, 274, 310, 272, 365, 264, 420, 244, 470, 208, 505, 156, 522, 96);
        DoubleUnaryOperator line = y -> Curve.at(y, 190, 176, 296, 160, 402, 152);
        DoubleUnaryOperator cleft = y -> Curve.at(y, 96, 40, 330, 40, 510, 14);
        List<ZoneOutline> zones = new ArrayList<>();
        both(zones, 6, 86, 190, axial, abaxial);
        both(zones, 4, 190, 296, axial, line);
        both(zones, 3, 190, 296, line, abaxial);
        both(zones, 5, 296, 402, axial, line);
        both(zones, 2, 296, 402, line, abaxial);
        both(zones, 1, 402, 522, axial, abaxial);
        zones.add(new ZoneOutline(
                new ClawZone(Claw.INTERDIGITAL, 0), strip(96, 510, y -> -cleft.applyAsDouble(y), cleft)));
        if (!heel) {
            return new FootMap(
                    556, 438, zones.stream().map(zone -> raised(zone, 86)).toList());
        }
        zones.add(new ZoneOutline(
                new ClawZone(Claw.INTERDIGITAL, 10), strip(0, 81, y -> -200 - y * .5, y -> 200 + y * .5)));
        return new FootMap(556, 524, zones);
    }

    private static ZoneOutline raised(ZoneOutline zone, double by) {
        return new ZoneOutline(
                zone.where(),
                zone.outline().stream().map(s -> new Spot(s.x(), s.y() - by)).toList());
    }

    private static FootMap walls() {
        List<ZoneOutline> zones = new ArrayList<>();
        zones.add(new ZoneOutline(
                new ClawZone(Claw.INTERDIGITAL, 10), strip(0, 92, y -> -200 - y * .5, y -> 200 + y * .5)));
        both(zones, 12, 110, 290, y -> 8, y -> 90);
        both(zones, 11, 296, 490, y -> 8, y -> 90 - 8 * (y - 296) / 194);
        both(zones, 8, 104, 290, y -> 104, y -> 188);
        both(zones, 7, 296, 500, y -> 104 - 8 * (y - 296) / 204, y -> 188 - 12 * (y - 296) / 204);
        both(zones, 9, 104, 340, y -> 193, y -> 274);
        return new FootMap(556, 524, zones);
    }

    /** Lays a zone on both claws: on the outer one as given (right of the cleft), on the inner one mirrored. */
    private static void both(
            List<ZoneOutline> zones,
            int zone,
            double top,
            double bottom,
            DoubleUnaryOperator left,
            DoubleUnaryOperator right) {
        zones.add(new ZoneOutline(new ClawZone(Claw.LATERAL, zone), strip(top, bottom, left, right)));
        zones.add(new ZoneOutline(
                new ClawZone(Claw.MEDIAL, zone),
                strip(top, bottom, y -> -right.applyAsDouble(y), y -> -left.applyAsDouble(y))));
    }

    private static List<Spot> strip(double top, double bottom, DoubleUnaryOperator left, DoubleUnaryOperator right) {
        List<Spot> spots = new ArrayList<>();
        for (int i = 0; i <= STEPS; i++) {
            double y = top + (bottom - top) * i / STEPS;
            spots.add(new Spot(right.applyAsDouble(y), y));
        }
        for (int i = STEPS; i >= 0; i--) {
            double y = top + (bottom - top) * i / STEPS;
            spots.add(new Spot(left.applyAsDouble(y), y));
        }
        return spots;
    }

    /** Half width of a dome that starts at {@code top} and is full after {@code height}; 0 to 1. */
    private static double dome(double y, double top, double height) {
        double t = Math.min(1, Math.max(0, (top + height - y) / height));
        return Math.sqrt(1 - t * t);
    }
}
