package levelback.clips.drawn.gait;

import levelback.scoring.value.Leg;

/** From the place of a hoof to the limb above it: elbow and hock point back, stifle and folding carpus forward. */
final class Limbs {
    static final double SCAPULA_M = .34;
    static final double HUMERUS_M = .295;
    static final double FOREARM_M = .355;
    static final double FORE_CANNON_M = .285;
    static final double FEMUR_M = .38;
    static final double TIBIA_M = .39;
    static final double HIND_CANNON_M = .355;
    static final double PASTERN_M = .105;
    static final Spot SCAPULA_TURNS = new Spot(.50, 1.275);
    static final Spot HIP = new Spot(-.52, 1.18);

    private static final double CORONET_BACK_M = .080;
    private static final double CORONET_UP_M = .062;
    private static final double LONGEST_SLIDE_M = .015;

    private static final int STEPS = 1220;
    private static final double FIRST_STIFLE_DEG = 50;
    private static final double STIFLE_STEP_DEG = .1;
    private static final double[] REACH = new double[STEPS + 1];
    private static final double[] LEAN = new double[STEPS + 1];

    static {
        Spot origin = new Spot(0, 0);
        for (int i = 0; i <= STEPS; i++) {
            double stifle = Math.toRadians(FIRST_STIFLE_DEG + i * STIFLE_STEP_DEG);
            Spot fetlock = hindFetlock(origin, 0, stifle);
            REACH[i] = origin.distance(fetlock);
            LEAN[i] = origin.direction(fetlock);
        }
    }

    private Limbs() {}

    /**
     * What the foot does at an instant.
     *
     * @param toe tip of the toe in the cow frame
     * @param pitchRad heel up
     * @param pasternRad angle of the pastern with the floor, without the pitch's share
     * @param carpusRad how far the carpus is folded
     * @param planted whether it stands
     */
    record Foot(Spot toe, double pitchRad, double pasternRad, double carpusRad, boolean planted) {}

    static LimbPose pose(Leg leg, Foot foot, double bodyDy) {
        double c = Math.cos(foot.pitchRad);
        double s = Math.sin(foot.pitchRad);
        Spot coronet = foot.toe.plus(-CORONET_BACK_M * c + CORONET_UP_M * s, CORONET_BACK_M * s + CORONET_UP_M * c);
        double gamma = foot.pasternRad + .85 * foot.pitchRad;
        Spot fetlock = coronet.plus(-PASTERN_M * Math.cos(gamma), PASTERN_M * Math.sin(gamma));
        return leg.isFore() ? fore(leg, foot, bodyDy, coronet, fetlock) : hind(leg, foot, bodyDy, coronet, fetlock);
    }

    private static double swing(double toeX, double middle) {
        return Math.max(-1.2, Math.min(1.2, (toeX - middle) / .47));
    }

    private static LimbPose hind(Leg leg, Foot foot, double bodyDy, Spot coronet, Spot fetlock) {
        double u = swing(foot.toe.x(), GaitNumbers.HIND_TOE_M);
        Spot hip = HIP.plus(.035 * u, bodyDy - .01 * u * u);
        double reach = hip.distance(fetlock);
        int low = 0;
        int high = STEPS;
        while (high - low > 1) {
            int middle = (low + high) / 2;
            if (REACH[middle] <= reach) {
                low = middle;
            } else {
                high = middle;
            }
        }
        double f = Math.max(0, Math.min(1, (reach - REACH[low]) / (REACH[high] - REACH[low])));
        double stifleRad = Math.toRadians(FIRST_STIFLE_DEG + (low + f) * STIFLE_STEP_DEG);
        double theta = hip.direction(fetlock) - (LEAN[low] + f * (LEAN[high] - LEAN[low]));
        Spot stifle = hip.along(theta, FEMUR_M);
        Spot hock = stifle.along(theta - (Math.PI - stifleRad), TIBIA_M);
        return new LimbPose(leg, hip, hip, stifle, hock, fetlock, coronet, foot.toe, foot.pitchRad, foot.planted);
    }

    private static double hockRad(double stifleRad) {
        return stifleRad + Math.toRadians(14 - 8 * (Math.toDegrees(stifleRad) - 90) / 60);
    }

    private static Spot hindFetlock(Spot hip, double theta, double stifleRad) {
        double tibia = theta - (Math.PI - stifleRad);
        double cannon = tibia + (Math.PI - hockRad(stifleRad));
        return hip.along(theta, FEMUR_M).along(tibia, TIBIA_M).along(cannon, HIND_CANNON_M);
    }

    private static LimbPose fore(Leg leg, Foot foot, double bodyDy, Spot coronet, Spot fetlock) {
        double u = swing(foot.toe.x(), GaitNumbers.FORE_TOE_M);
        Spot root = SCAPULA_TURNS.plus(.035 * u, bodyDy - .01 * u * u);
        Spot shoulder = root.along(Math.toRadians(37 + 13 * u), SCAPULA_M);
        double fold = foot.carpusRad;
        double d = Math.sqrt(
                FOREARM_M * FOREARM_M + FORE_CANNON_M * FORE_CANNON_M + 2 * FOREARM_M * FORE_CANNON_M * Math.cos(fold));
        double reach = shoulder.distance(fetlock);
        double longest = .998 * (HUMERUS_M + d);
        if (reach > longest) {
            // The whole shoulder blade glides on the rib cage, so that no bone grows.
            double share = Math.min(LONGEST_SLIDE_M, reach - longest) / reach;
            Spot slid = shoulder.towards(fetlock, share);
            root = root.plus(slid.x() - shoulder.x(), slid.y() - shoulder.y());
            shoulder = slid;
            reach = shoulder.distance(fetlock);
        }
        double cosA = (HUMERUS_M * HUMERUS_M + reach * reach - d * d) / (2 * HUMERUS_M * reach);
        double humerus = shoulder.direction(fetlock) - Math.acos(Math.max(-1, Math.min(1, cosA)));
        Spot elbow = shoulder.along(humerus, HUMERUS_M);
        double forward = Math.asin(Math.max(-1, Math.min(1, FORE_CANNON_M * Math.sin(fold) / d)));
        Spot carpus = elbow.along(elbow.direction(fetlock) + forward, FOREARM_M);
        return new LimbPose(
                leg, root, shoulder, elbow, carpus, fetlock, coronet, foot.toe, foot.pitchRad, foot.planted);
    }
}
