package levelback.clips.drawn.paint;

import java.util.ArrayList;
import java.util.List;
import levelback.clips.drawn.gait.LimbPose;
import levelback.clips.drawn.gait.Spot;
import levelback.clips.drawn.gait.Walker;
import levelback.scoring.value.Leg;

/** The flesh around a limb's bones: half-widths before and behind stations along them, as two open curves. */
final class LimbShape {
    static final int PER_SPAN = 4;

    // Bone of each station (0: root to shoulder, 1: upper, 2: lower, 3: cannon, 4: pastern) and the share along it.
    private static final int[] FORE_BONE = {0, 1, 1, 2, 2, 2, 2, 3, 3, 3, 3, 3, 4, 4};
    private static final double[] FORE_SHARE = {.55, .25, .85, .22, .50, .80, .96, .10, .28, .55, .82, 1, .5, 1};
    private static final double[] FORE_FRONT = {
        .14, .13, .105, .085, .064, .046, .050, .048, .034, .031, .033, .042, .036, .046
    };
    private static final double[] FORE_BACK = {
        .19, .17, .12, .09, .066, .05, .05, .048, .037, .034, .037, .05, .04, .056
    };
    private static final int[] HIND_BONE = {1, 1, 1, 2, 2, 2, 2, 3, 3, 3, 3, 3, 4, 4};
    private static final double[] HIND_SHARE = {-.15, .30, .72, .05, .38, .70, .90, .03, .20, .50, .80, 1, .5, 1};
    private static final double[] HIND_FRONT = {
        .17, .20, .175, .115, .080, .058, .052, .056, .042, .032, .034, .043, .036, .046
    };
    private static final double[] HIND_BACK = {
        .275, .272, .25, .215, .125, .072, .074, .068, .046, .036, .038, .05, .04, .056
    };

    private static final LimbShape FORE_AT_REST = of(Walker.standing().limb(Leg.LF));
    private static final LimbShape HIND_AT_REST = of(Walker.standing().limb(Leg.LH));

    final Spline.Path front;
    final Spline.Path back;

    private LimbShape(Spline.Path front, Spline.Path back) {
        this.front = front;
        this.back = back;
    }

    static LimbShape atRest(Leg leg) {
        return leg.isFore() ? FORE_AT_REST : HIND_AT_REST;
    }

    static LimbShape of(LimbPose pose) {
        boolean fore = pose.leg().isFore();
        int[] bone = fore ? FORE_BONE : HIND_BONE;
        double[] share = fore ? FORE_SHARE : HIND_SHARE;
        double[] frontWide = fore ? FORE_FRONT : HIND_FRONT;
        double[] backWide = fore ? FORE_BACK : HIND_BACK;
        Spot[] joints = {pose.root(), pose.shoulder(), pose.knee(), pose.joint(), pose.fetlock(), pose.coronet()};
        int n = bone.length;
        List<Spot> fronts = new ArrayList<>(n);
        List<Spot> backs = new ArrayList<>(n);
        List<Spot> centres = new ArrayList<>(n);
        for (int i = 0; i < n; i++) {
            Spot from = joints[bone[i]];
            Spot to = joints[bone[i] + 1];
            Spot centre = from.towards(to, share[i]);
            centres.add(centre);
            double[] d = unit(from, to);
            // Near a joint the cross-section leans towards halving the angle between the bones.
            if (share[i] > .7 && bone[i] < 4) {
                lean(d, unit(to, joints[bone[i] + 2]), share[i] >= 1 ? 1 : (share[i] - .7) * 2.2);
            } else if (share[i] < .3 && bone[i] > (fore ? 0 : 1) && share[i] >= 0) {
                lean(d, unit(joints[bone[i] - 1], from), (.3 - share[i]) * 2.2);
            }
            // Turned to the front: a bone pointing down has forward on its left hand.
            double nx = -d[1];
            double ny = d[0];
            fronts.add(centre.plus(frontWide[i] * nx, frontWide[i] * ny));
            backs.add(centre.plus(-backWide[i] * nx, -backWide[i] * ny));
        }
        unfold(fronts, centres);
        unfold(backs, centres);
        return new LimbShape(Spline.through(fronts, false, PER_SPAN), Spline.through(backs, false, PER_SPAN));
    }

    /** On the inside of a sharp bend cross-sections would overlap: flesh is pushed together there, not through itself. */
    private static void unfold(List<Spot> edge, List<Spot> centres) {
        for (int round = 0; round < 6; round++) {
            for (int i = 0; i + 1 < edge.size(); i++) {
                Spot a = edge.get(i);
                Spot b = edge.get(i + 1);
                double cx = centres.get(i + 1).x() - centres.get(i).x();
                double cy = centres.get(i + 1).y() - centres.get(i).y();
                double length = Math.max(1e-9, Math.hypot(cx, cy));
                double forward = ((b.x() - a.x()) * cx + (b.y() - a.y()) * cy) / length;
                double missing = .30 * length - forward;
                if (missing > 0) {
                    double dx = .5 * missing * cx / length;
                    double dy = .5 * missing * cy / length;
                    edge.set(i, a.plus(-dx, -dy));
                    edge.set(i + 1, b.plus(dx, dy));
                }
            }
        }
    }

    private static double[] unit(Spot from, Spot to) {
        double length = Math.max(1e-9, from.distance(to));
        return new double[] {(to.x() - from.x()) / length, (to.y() - from.y()) / length};
    }

    private static void lean(double[] d, double[] other, double weight) {
        double x = d[0] + weight * other[0];
        double y = d[1] + weight * other[1];
        double length = Math.max(1e-9, Math.hypot(x, y));
        d[0] = x / length;
        d[1] = y / length;
    }
}
