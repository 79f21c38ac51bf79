package levelback.clips.drawn.gait;

/**
 * Trunk, neck and head at an instant: how the resting outline is bent.
 *
 * @param hipsUpM how far the hips ride up or down
 * @param withersUpM how far the withers do
 * @param backRiseM how far the back is arched
 * @param neckRad how far the neck is up, about {@link #NECK_TURNS}
 * @param headRad direction of the face: counter-clockwise from forward, so negative looks down
 * @param tailM how far the end of the tail is swung, to the front
 * @param udderM how far the udder is swung, to the front
 * @param earRad how far the ear is flicked
 */
public record BodyPose(
        double hipsUpM,
        double withersUpM,
        double backRiseM,
        double neckRad,
        double headRad,
        double tailM,
        double udderM,
        double earRad) {

    /** What the neck turns about. */
    public static final Spot NECK_TURNS = new Spot(.62, 1.20);
    /** The poll, at rest. */
    public static final Spot POLL = new Spot(1.15, 1.475);

    private static final double WITHERS_X = .50;
    private static final double BACK_LENGTH_M = .96;
    private static final double HIPS_X = -.52;

    /** How far a column of the trunk is moved up. */
    public double upM(double x) {
        double share = Math.max(-.35, Math.min(1.12, (x - HIPS_X) / (WITHERS_X - HIPS_X)));
        double up = hipsUpM + share * (withersUpM - hipsUpM);
        double v = (x + WITHERS_X) / BACK_LENGTH_M;
        if (v > 0 && v < 1) {
            up += backRiseM * Math.pow(Math.sin(Math.PI * v), 1.3);
        } else if (v < 0) {
            up += .55 * backRiseM * v;
        }
        return up;
    }

    /** A point of the trunk at rest, bent. */
    public Spot bent(Spot atRest) {
        return new Spot(atRest.x(), atRest.y() + upM(atRest.x()));
    }

    /** A point of the neck at rest, turned by a share of the neck's turn, then bent. */
    public Spot onNeck(Spot atRest, double share) {
        Spot turned = atRest.turned(NECK_TURNS, neckRad * share);
        return turned.plus(0, upM(turned.x()));
    }

    /** The poll. */
    public Spot poll() {
        return onNeck(POLL, 1);
    }
}
