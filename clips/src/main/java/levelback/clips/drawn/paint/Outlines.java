package levelback.clips.drawn.paint;

import java.util.ArrayList;
import java.util.List;
import levelback.clips.drawn.gait.BodyPose;
import levelback.clips.drawn.gait.Spot;

/** Outlines of a mature cow at rest, in the cow frame (withers 1.455 m). */
final class Outlines {
    /** Top line, rump, thigh, belly, brisket; the front closes through the neck. */
    static final List<Spot> TRUNK = spots(
            .52, 1.455, .36, 1.445, .12, 1.425, -.14, 1.425, -.36, 1.44, -.56, 1.448, -.72, 1.43, -.815, 1.375, -.845,
            1.27, -.815, 1.10, -.76, .96, -.66, .84, -.52, .76, -.34, .69, -.10, .60, .14, .585, .36, .615, .54, .655);

    /** From the brisket up the throat to the poll, and back along the crest to the withers. */
    private static final List<Spot> NECK =
            spots(.85, .80, .925, .95, 1.01, 1.10, 1.11, 1.205, 1.15, 1.475, 1.05, 1.475, .86, 1.425, .62, 1.425);

    private static final double[] NECK_TURN = {0, .2, .5, .8, 1, 1, 1, .7, .25};

    static final List<Spot> HEAD = spots(
            -.045, -.03, -.02, .03, .05, .048, .14, .047, .24, .028, .34, .016, .43, .018, .495, .005, .525, -.04, .52,
            -.095, .475, -.125, .42, -.125, .36, -.135, .28, -.175, .19, -.225, .10, -.245, .03, -.215, -.03, -.13);

    static final List<Spot> UDDER =
            spots(-.16, .68, -.22, .60, -.34, .535, -.48, .505, -.60, .53, -.665, .62, -.69, .74, -.66, .86, -.40, .84);

    static final List<Spot> HOOF =
            spots(0, .003, -.012, .022, -.050, .078, -.088, .076, -.118, .060, -.127, .030, -.120, 0);

    private Outlines() {}

    private static List<Spot> spots(double... xy) {
        List<Spot> made = new ArrayList<>();
        for (int i = 0; i < xy.length; i += 2) {
            made.add(new Spot(xy[i], xy[i + 1]));
        }
        return List.copyOf(made);
    }

    /** Trunk with neck, bent as she stands. */
    static List<Spot> trunk(BodyPose body) {
        List<Spot> bent = new ArrayList<>();
        for (Spot spot : TRUNK) {
            bent.add(body.bent(spot));
        }
        for (int i = 0; i < NECK.size(); i++) {
            bent.add(body.onNeck(NECK.get(i), NECK_TURN[i]));
        }
        return bent;
    }
}
