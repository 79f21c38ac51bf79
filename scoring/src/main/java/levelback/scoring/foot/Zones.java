package levelback.scoring.foot;

import java.util.List;
import java.util.stream.IntStream;

/**
 * The zones of a claw, 0 to 12.
 *
 * <p>Source: International Lameness Committee, consensus of 2008. The places of zones 2, 7 to 9, 11 and 12 are from
 * memory.
 */
public final class Zones {

    private static final List<String> PLACES = List.of(
            "skin between the claws",
            "white line at the toe",
            "white line, outer side, middle",
            "white line, outer side, near the heel",
            "where sole meets bulb, towards the cleft",
            "sole, front and middle",
            "bulb of the heel",
            "outer wall, front part",
            "outer wall, back part",
            "skin above the coronet",
            "skin at the back of the foot, cleft at the heel",
            "inner wall, front part",
            "inner wall, back part");

    private Zones() {}

    /** All zone numbers, 0 to 12. */
    public static List<Integer> all() {
        return IntStream.range(0, PLACES.size()).boxed().toList();
    }

    /** Whether this is the number of a zone. */
    public static boolean isZone(int zone) {
        return zone >= 0 && zone < PLACES.size();
    }

    /**
     * Where it is, in a few words.
     *
     * @throws IllegalArgumentException if there is no such zone
     */
    public static String place(int zone) {
        if (!isZone(zone)) {
            throw new IllegalArgumentException("no zone " + zone);
        }
        return PLACES.get(zone);
    }

    /** Whether the claw stands on it: zones 1 to 6. */
    public static boolean isWeightBearing(int zone) {
        return zone >= 1 && zone <= 6;
    }

    /** Whether it belongs to the cleft and not to one claw: zone 0, and 10 at the heel. */
    public static boolean isInterdigital(int zone) {
        return zone == 0 || zone == 10;
    }
}
