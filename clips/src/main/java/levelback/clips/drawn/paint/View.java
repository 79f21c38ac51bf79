package levelback.clips.drawn.paint;

import levelback.clips.drawn.CameraPlan;
import levelback.clips.drawn.gait.BodyPose;
import levelback.clips.drawn.gait.Pose;
import levelback.clips.drawn.gait.Spot;

/** From the cow frame of one pose to the picture, and back onto the resting trunk. */
public final class View {
    /** How far the lower limbs stand off the middle of the cow, to the camera's side and away from it. */
    public static final double LIMB_OFF_M = .19;

    private static final double LIMB_OFF_AT_TRUNK_M = .03;

    private final CameraPlan camera;
    private final Pose pose;
    private final int direction;
    private final double size;

    /**
     * A view of a pose.
     *
     * @param direction 1 towards the right of the picture, -1 towards the left
     * @param size k, her size
     */
    public View(CameraPlan camera, Pose pose, int direction, double size) {
        this.camera = camera;
        this.pose = pose;
        this.direction = direction;
        this.size = size;
    }

    /** 1 if the lamp, at the left of the picture, stands ahead of her, else -1. */
    int lampSide() {
        return -direction;
    }

    /** Depth of a point of a limb: the limbs draw together towards the trunk. Below 0.6 m the planes are ±0.19 m. */
    private static double depth(double y, double side) {
        if (side == 0) {
            return 0;
        }
        double in = Grain.ease(.60, 1.12, y);
        return side * (LIMB_OFF_M + in * (LIMB_OFF_AT_TRUNK_M - LIMB_OFF_M));
    }

    /** Column of a point; side -1 a near limb, 0 the body, 1 a far limb. */
    public double column(double x, double y, double side) {
        return camera.columnPx(direction * (pose.alongM() + size * x), depth(y, side));
    }

    /** Row of a point. */
    public double row(double y, double side) {
        return camera.rowPx(size * y, depth(y, side));
    }

    double pxPerM() {
        return camera.pxPerM(0) * size;
    }

    double heightAt(int row) {
        return camera.yM(row, 0) / size;
    }

    double forwardAt(double column) {
        return (camera.xM(column, 0) * direction - pose.alongM()) / size;
    }

    void project(Spline.Path path, double side) {
        for (int i = 0; i < path.size; i++) {
            double y = path.y[i];
            path.x[i] = column(path.x[i], y, side);
            path.y[i] = row(y, side);
        }
    }

    /** How much of the neck's turn a column of the picture has. */
    static double neckShare(double forward) {
        return Grain.ease(.45, 1.10, forward);
    }

    /** The place of the resting trunk that shows at a pixel. */
    Spot trunkAtRest(double column, double row) {
        double x = forwardAt(column);
        BodyPose body = pose.body();
        Spot unbent = new Spot(x, camera.yM(row, 0) / size - body.upM(x));
        return unbent.turned(BodyPose.NECK_TURNS, -body.neckRad() * neckShare(x));
    }
}
