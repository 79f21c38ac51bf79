package levelback.player.trim;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import levelback.scoring.foot.Claw;
import levelback.scoring.value.Leg;
import org.junit.jupiter.api.Test;

/** The map against the trade's facts (claw zones, outer and inner), and against a cold finger. */
class FootMapTest {

    private static final double WIDTH = 556;
    private static final double HEIGHT = 490;
    /** The smallest the page draws it, at 1280×720. */
    private static final double SMALL_WIDTH = 552;

    private static final double SMALL_HEIGHT = 368;

    private final FootMap map = FootMap.of(FootMap.Layer.WHOLE);

    @Test
    void hasEveryZoneOnBothClawsAndTheTwoBetweenThem() {
        Set<ClawZone> all = new HashSet<>();
        for (int zone = 0; zone <= 12; zone++) {
            if (zone == 0 || zone == 10) {
                all.add(new ClawZone(Claw.INTERDIGITAL, zone));
            } else {
                all.add(new ClawZone(Claw.LATERAL, zone));
                all.add(new ClawZone(Claw.MEDIAL, zone));
            }
        }
        assertThat(map.placed(Leg.RH, false, WIDTH, HEIGHT))
                .extracting(ZoneOutline::where)
                .containsExactlyInAnyOrderElementsOf(all);
    }

    @Test
    void noPointLiesInTwoZonesOnAnyLegOrLayer() {
        for (FootMap.Layer layer : FootMap.Layer.values()) {
            for (Leg leg : Leg.values()) {
                for (boolean up : new boolean[] {false, true}) {
                    List<ZoneOutline> placed = FootMap.of(layer).placed(leg, up, WIDTH, HEIGHT);
                    for (double y = .31; y < HEIGHT; y += 2) {
                        for (double x = .37; x < WIDTH; x += 2) {
                            double px = x;
                            double py = y;
                            assertThat(placed.stream()
                                            .filter(z -> z.holds(px, py))
                                            .count())
                                    .as("%s %s up=%s at %s,%s", layer, leg, up, x, y)
                                    .isLessThanOrEqualTo(1);
                        }
                    }
                }
            }
        }
    }

    /**
     * From behind the cow, foot folded back and toes down, her right is on the right: the outer claw of a right foot is on the
     * right, that of a left foot on the left (anatomy: lateral is away from the middle of the body). Worked out by hand.
     */
    @Test
    void outerClawIsAwayFromHerMiddleWithTheToesDown() {
        for (Leg leg : Leg.values()) {
            List<ZoneOutline> placed = map.placed(leg, false, WIDTH, HEIGHT);
            for (int zone : new int[] {1, 2, 3, 4, 5, 6, 7, 8, 9, 11, 12}) {
                double outer = middle(placed, Claw.LATERAL, zone).x();
                double inner = middle(placed, Claw.MEDIAL, zone).x();
                if (leg == Leg.RF || leg == Leg.RH) {
                    assertThat(outer).as(leg + " " + zone).isGreaterThan(WIDTH / 2);
                    assertThat(inner).as(leg + " " + zone).isLessThan(WIDTH / 2);
                } else {
                    assertThat(outer).as(leg + " " + zone).isLessThan(WIDTH / 2);
                    assertThat(inner).as(leg + " " + zone).isGreaterThan(WIDTH / 2);
                }
            }
        }
    }

    @Test
    void toesUpIsHalfATurnAndNoMirror() {
        for (Leg leg : Leg.values()) {
            List<ZoneOutline> down = map.placed(leg, false, WIDTH, HEIGHT);
            List<ZoneOutline> up = map.placed(leg, true, WIDTH, HEIGHT);
            for (ZoneOutline zone : down) {
                Spot there = middle(up, zone.where().claw(), zone.where().zone());
                assertThat(there.x()).isCloseTo(WIDTH - zone.middle().x(), org.assertj.core.data.Offset.offset(1e-6));
                assertThat(there.y()).isCloseTo(HEIGHT - zone.middle().y(), org.assertj.core.data.Offset.offset(1e-6));
            }
        }
    }

    /** Axial zones face the cleft, abaxial ones face away; the toe is down, the heel up (International Lameness Committee map). */
    @Test
    void zonesLieAsOnTheCommitteesMap() {
        List<ZoneOutline> placed = map.placed(Leg.RH, false, WIDTH, HEIGHT);
        Claw c = Claw.LATERAL;
        List<Integer> fromCleft = List.of(12, 4, 3, 8, 9);
        for (int i = 1; i < fromCleft.size(); i++) {
            assertThat(middle(placed, c, fromCleft.get(i)).x())
                    .isGreaterThan(middle(placed, c, fromCleft.get(i - 1)).x());
        }
        assertThat(middle(placed, c, 11).x()).isLessThan(middle(placed, c, 5).x());
        assertThat(middle(placed, c, 5).x()).isLessThan(middle(placed, c, 2).x());
        assertThat(middle(placed, c, 2).x()).isLessThan(middle(placed, c, 7).x());
        List<Integer> fromHeel = List.of(6, 4, 5, 1);
        for (int i = 1; i < fromHeel.size(); i++) {
            assertThat(middle(placed, c, fromHeel.get(i)).y())
                    .isGreaterThan(middle(placed, c, fromHeel.get(i - 1)).y());
        }
        assertThat(middle(placed, c, 3).y()).isLessThan(middle(placed, c, 2).y());
        assertThat(middle(placed, Claw.INTERDIGITAL, 10).y())
                .isLessThan(middle(placed, c, 6).y());
        assertThat(middle(placed, Claw.INTERDIGITAL, 0).x())
                .isCloseTo(WIDTH / 2, org.assertj.core.data.Offset.offset(.5));
    }

    @Test
    void everyZoneIsHitAtItsNumberOnEveryLegAndTurned() {
        for (FootMap.Layer layer : FootMap.Layer.values()) {
            for (Leg leg : Leg.values()) {
                for (boolean up : new boolean[] {false, true}) {
                    List<ZoneOutline> placed = FootMap.of(layer).placed(leg, up, WIDTH, HEIGHT);
                    for (ZoneOutline zone : placed) {
                        Spot m = zone.middle();
                        assertThat(FootMap.at(placed, m.x(), m.y())).contains(zone.where());
                    }
                }
            }
        }
    }

    @Test
    void aSquareOf44PxFitsInEveryZoneAtTheSmallestSize() {
        for (ZoneOutline zone : map.placed(Leg.LF, false, SMALL_WIDTH, SMALL_HEIGHT)) {
            assertThat(zone.squarePx()).as(zone.where().toString()).isGreaterThanOrEqualTo(44);
        }
    }

    @Test
    void aSquareOf20MmFitsInEveryZoneOfChuteMode() {
        double px = 20 * 96 / 25.4;
        for (FootMap.Layer layer : List.of(FootMap.Layer.SOLE, FootMap.Layer.WALLS)) {
            for (ZoneOutline zone : FootMap.of(layer).placed(Leg.RH, false, 556, 500)) {
                assertThat(zone.squarePx()).as(zone.where().toString()).isGreaterThanOrEqualTo(px);
            }
        }
    }

    @Test
    void soleAndWallsTogetherAreTheWholeFoot() {
        Set<ClawZone> zones = new HashSet<>();
        for (FootMap.Layer layer : List.of(FootMap.Layer.SOLE, FootMap.Layer.WALLS)) {
            zones.addAll(FootMap.of(layer).placed(Leg.RH, false, 500, 500).stream()
                    .map(ZoneOutline::where)
                    .collect(Collectors.toSet()));
        }
        assertThat(zones).hasSize(24);
    }

    @Test
    void arrowsReachEveryZone() {
        List<ZoneOutline> placed = map.placed(Leg.RH, false, WIDTH, HEIGHT);
        Set<ClawZone> reached = new HashSet<>(Set.of(new ClawZone(Claw.LATERAL, 4)));
        IntStream.range(0, 30)
                .forEach(round -> List.copyOf(reached).forEach(from -> {
                    FootMap.next(placed, from, 1, 0).ifPresent(reached::add);
                    FootMap.next(placed, from, -1, 0).ifPresent(reached::add);
                    FootMap.next(placed, from, 0, 1).ifPresent(reached::add);
                    FootMap.next(placed, from, 0, -1).ifPresent(reached::add);
                }));
        assertThat(reached).hasSize(24);
        assertThat(FootMap.next(placed, new ClawZone(Claw.LATERAL, 4), 1, 0)).contains(new ClawZone(Claw.LATERAL, 3));
        assertThat(FootMap.next(placed, new ClawZone(Claw.LATERAL, 4), 0, 1)).contains(new ClawZone(Claw.LATERAL, 5));
        assertThat(FootMap.next(placed, new ClawZone(Claw.LATERAL, 4), -1, 0)).contains(new ClawZone(Claw.LATERAL, 12));
    }

    private static Spot middle(List<ZoneOutline> placed, Claw claw, int zone) {
        return placed.stream()
                .filter(z -> z.where().equals(new ClawZone(claw, zone)))
                .findFirst()
                .orElseThrow()
                .middle();
    }
}
