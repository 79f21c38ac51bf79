package levelback.clips.drawn.paint;

import java.util.ArrayList;
import java.util.List;
import levelback.clips.drawn.CameraPlan;
import levelback.clips.drawn.WalkPlan;
import levelback.clips.drawn.gait.BodyPose;
import levelback.clips.drawn.gait.LimbPose;
import levelback.clips.drawn.gait.Pose;
import levelback.clips.drawn.gait.Spot;
import levelback.scoring.value.Leg;

/** Paints one cow. Her textures are baked once; safe to use by several threads, each with its canvas. */
final class CowPainter {
    static final int FAR_HIND = 1;
    static final int FAR_FORE = 2;
    static final int FAR_EAR = 3;
    static final int UDDER = 4;
    static final int TRUNK = 5;
    static final int TAIL = 6;
    static final int NEAR_HIND = 7;
    static final int NEAR_FORE = 8;
    static final int HEAD = 9;
    static final int NEAR_EAR = 10;

    private static final int UDDER_SKIN = Texture.bgr(126, 135, 164);
    private static final int TAG = Texture.bgr(48, 190, 226);

    private final CameraPlan camera;
    private final int direction;
    private final double size;
    private final Texture coat;
    private final Texture face;
    private final boolean lightTail;

    CowPainter(CameraPlan camera, WalkPlan plan) {
        this.camera = camera;
        direction = plan.direction().sign();
        size = plan.traits().sizeFactor();
        coat = Coat.bake(plan.traits(), -direction);
        face = Face.bake(plan.traits(), -direction);
        int atTail =
                coat.colourAt((float) ((-.78 - coat.leftM) * coat.pxPerM), (float) ((coat.topM - 1.36) * coat.pxPerM));
        lightTail = (atTail & 0xff) > 120;
    }

    /** A colour under a light; dark hair shines a little where light falls on it, white never burns out. */
    static int lit(int colour, float light) {
        int f = (int) (light * 256);
        int sheen = light > .80f ? (int) ((light - .80f) * 52) : 0;
        int b = (((colour & 0xff) * f) >> 8) + sheen;
        int g = ((((colour >> 8) & 0xff) * f) >> 8) + sheen;
        int r = ((((colour >> 16) & 0xff) * f) >> 8) + sheen;
        return knee(b) | knee(g) << 8 | knee(r) << 16;
    }

    private static int knee(int v) {
        return v < 168 ? v : Math.min(228, 168 + (v - 168) * 19 / 32);
    }

    View view(Pose pose) {
        return new View(camera, pose, direction, size);
    }

    static int layerOf(Leg leg, int direction) {
        // Walking to the right she shows her right side.
        boolean near = leg.isLeft() == (direction < 0);
        if (leg.isFore()) {
            return near ? NEAR_FORE : FAR_FORE;
        }
        return near ? NEAR_HIND : FAR_HIND;
    }

    /** Her shadow on the floor. */
    void paintShadow(Canvas canvas, Pose pose) {
        View view = view(pose);
        double floor = camera.rowPx(0, 0);
        double middle = view.column(.0, 0, 0);
        double s = view.pxPerM();
        canvas.shade(middle, floor, 1.12 * s, .105 * s, .52, .05);
        canvas.shade(middle, floor - .012 * s, .80 * s, .065 * s, .24, .0);
        for (LimbPose limb : pose.limbs()) {
            boolean near = layerOf(limb.leg(), direction) >= NEAR_HIND;
            double side = near ? -1 : 1;
            double lift = limb.toe().y();
            double column = view.column(limb.toe().x() - .055, 0, side);
            double depth = .62 * Math.exp(-lift / .05);
            double wide = s * (.105 + .5 * lift);
            canvas.shade(column, view.row(0, side) + .5, wide, .022 * s * (1 + 3 * lift), depth, .15);
        }
    }

    /**
     * Paints her.
     *
     * @param early her pose as the shutter opens, {@code late} as it closes
     * @param slot number of this cow in the frame, from 1 to 7
     * @param gain how bright the lamps are where she is
     */
    void paint(Canvas canvas, Pose pose, Pose early, Pose late, int slot, float gain) {
        View view = view(pose);
        int base = 16 * slot;
        LimbPainter limbs = new LimbPainter(canvas, view, coat, gain);
        Leg[] order =
                direction > 0 ? new Leg[] {Leg.LH, Leg.LF, Leg.RH, Leg.RF} : new Leg[] {Leg.RH, Leg.RF, Leg.LH, Leg.LF};
        limbs.paint(pose.limb(order[0]), early.limb(order[0]), late.limb(order[0]), false, base + FAR_HIND);
        limbs.paint(pose.limb(order[1]), early.limb(order[1]), late.limb(order[1]), false, base + FAR_FORE);
        ear(canvas, view, pose.body(), base + FAR_EAR, gain, false);
        udder(canvas, view, pose.body(), base + UDDER, gain);
        trunk(canvas, view, pose.body(), base + TRUNK, gain);
        tail(canvas, view, pose.body(), base + TAIL, gain);
        limbs.paint(pose.limb(order[2]), early.limb(order[2]), late.limb(order[2]), true, base + NEAR_HIND);
        limbs.paint(pose.limb(order[3]), early.limb(order[3]), late.limb(order[3]), true, base + NEAR_FORE);
        head(canvas, view, pose.body(), base + HEAD, gain);
        ear(canvas, view, pose.body(), base + NEAR_EAR, gain, true);
    }

    private static boolean cover(Canvas canvas, Spline.Path path) {
        if (!canvas.coverage.beginAround(new Spline.Path[] {path}, canvas.width, canvas.height)) {
            return false;
        }
        canvas.coverage.add(path, 1);
        canvas.coverage.finish();
        return true;
    }

    private void trunk(Canvas canvas, View view, BodyPose body, int layer, float gain) {
        Spline.Path path = Spline.through(Outlines.trunk(body), true, 5);
        view.project(path, 0);
        if (!cover(canvas, path)) {
            return;
        }
        Coverage box = canvas.coverage;
        int[] ink = canvas.plate();
        int w = box.width;
        float[] forward = new float[w];
        float[] up = new float[w];
        float[] cos = new float[w];
        float[] sin = new float[w];
        for (int x = 0; x < w; x++) {
            double f = view.forwardAt(x + box.left);
            double turn = -body.neckRad() * View.neckShare(f);
            forward[x] = (float) (f - BodyPose.NECK_TURNS.x());
            up[x] = (float) (body.upM(f) + BodyPose.NECK_TURNS.y());
            cos[x] = (float) Math.cos(turn);
            sin[x] = (float) Math.sin(turn);
        }
        float px = (float) coat.pxPerM;
        float u0 = (float) ((BodyPose.NECK_TURNS.x() - coat.leftM) * px);
        float v0 = (float) ((coat.topM - BodyPose.NECK_TURNS.y()) * px);
        for (int y = 0; y < box.height; y++) {
            float height = (float) view.heightAt(y + box.top);
            int row = box.rowStart(y);
            for (int x = 0; x < w; x++) {
                if (box.share[row + x] > .004f) {
                    float dx = forward[x];
                    float dy = height - up[x];
                    float u = u0 + px * (cos[x] * dx - sin[x] * dy);
                    float v = v0 - px * (sin[x] * dx + cos[x] * dy);
                    ink[y * w + x] = lit(coat.colourAt(u, v), coat.lightAt(u, v) * gain);
                }
            }
        }
        canvas.print(layer);
    }

    private void head(Canvas canvas, View view, BodyPose body, int layer, float gain) {
        Spot poll = body.poll();
        double c = Math.cos(body.headRad());
        double s = Math.sin(body.headRad());
        Spline.Path path = Spline.through(Outlines.HEAD, true, 5);
        for (int i = 0; i < path.size; i++) {
            double x = path.x[i];
            double y = path.y[i];
            path.x[i] = poll.x() + c * x - s * y;
            path.y[i] = poll.y() + s * x + c * y;
        }
        view.project(path, 0);
        if (!cover(canvas, path)) {
            return;
        }
        Coverage box = canvas.coverage;
        int[] ink = canvas.plate();
        float px = (float) face.pxPerM;
        for (int y = 0; y < box.height; y++) {
            double dy = view.heightAt(y + box.top) - poll.y();
            for (int x = 0; x < box.width; x++) {
                if (box.share[box.rowStart(y) + x] > .004f) {
                    double dx = view.forwardAt(x + box.left) - poll.x();
                    float u = (float) (c * dx + s * dy - face.leftM) * px;
                    float v = (float) (face.topM + s * dx - c * dy) * px;
                    ink[y * box.width + x] = lit(face.colourAt(u, v), face.lightAt(u, v) * gain);
                }
            }
        }
        // The jaw's edge melts into the throat behind it.
        for (int y = 0; y < box.height; y++) {
            double dy = view.heightAt(y + box.top) - poll.y();
            int row = box.rowStart(y);
            for (int x = 0; x < box.width; x++) {
                double dx = view.forwardAt(x + box.left) - poll.x();
                double along = c * dx + s * dy;
                if (along < .09) {
                    double across = -s * dx + c * dy;
                    double soft = Grain.ease(-.055, .05, along) * .65 + .35;
                    double keep = across > -.02 ? 1 : soft;
                    box.share[row + x] *= (float) keep;
                }
            }
        }
        canvas.print(layer);
    }

    private void ear(Canvas canvas, View view, BodyPose body, int layer, float gain, boolean near) {
        Spot poll = body.poll();
        double turn = body.headRad() + Math.PI + (near ? .60 : .42) - body.earRad() * (near ? 1 : -1);
        double c = Math.cos(turn);
        double s = Math.sin(turn);
        double hc = Math.cos(body.headRad());
        double hs = Math.sin(body.headRad());
        double ox = near ? .015 : -.005;
        double oy = near ? -.045 : -.005;
        double rootX = poll.x() + hc * ox - hs * oy;
        double rootY = poll.y() + hs * ox + hc * oy;
        double[] shape = {
            -.015, .018, .04, .040, .09, .048, .14, .036, .178, .006, .172, -.010, .13, -.034, .08, -.044, .03, -.034,
            -.012, -.018
        };
        List<Spot> spots = new ArrayList<>();
        for (int i = 0; i < shape.length; i += 2) {
            // The far one is half behind the poll.
            double f = near ? 1 : .62;
            spots.add(at(rootX, rootY, c, s, f * shape[i], f * shape[i + 1]));
        }
        Spline.Path path = Spline.through(spots, true, 4);
        view.project(path, 0);
        int dark = Texture.bgr(34, 32, 33);
        if (cover(canvas, path)) {
            Coverage box = canvas.coverage;
            int[] ink = canvas.plate();
            for (int y = 0; y < box.height; y++) {
                double dy = view.heightAt(y + box.top) - rootY;
                for (int x = 0; x < box.width; x++) {
                    if (box.share[box.rowStart(y) + x] <= .004f) {
                        continue;
                    }
                    double dx = view.forwardAt(x + box.left) - rootX;
                    double u = c * dx + s * dy;
                    double v = -s * dx + c * dy;
                    // A shell: the inner side darker, the rim catching light.
                    double rim = Math.abs(v) / (.048 * Math.max(.25, 1 - Math.pow(Math.abs(u - .085) / .11, 2)));
                    double light = near ? .85 + .9 * Grain.ease(.55, 1.0, rim) : .7;
                    light += u < .02 ? .2 : 0;
                    ink[y * box.width + x] = lit(dark, (float) light * gain);
                }
            }
            canvas.print(layer);
        }
        if (near) {
            Spline.Path tag = new Spline.Path(4);
            double hang = body.earRad() * .5;
            double tc = Math.cos(turn + hang + .15);
            double ts = Math.sin(turn + hang + .15);
            Spot hole = at(rootX, rootY, c, s, .088, .004);
            for (double[] corner : new double[][] {{-.017, -.012}, {.019, -.012}, {.022, .040}, {-.020, .040}}) {
                tag.add(at(hole.x(), hole.y(), tc, ts, corner[0], corner[1]));
            }
            view.project(tag, 0);
            if (cover(canvas, tag)) {
                canvas.print(layer, Texture.lit(TAG, .88f * gain));
            }
        }
    }

    private static Spot at(double ox, double oy, double c, double s, double x, double y) {
        return new Spot(ox + c * x - s * y, oy + s * x + c * y);
    }

    private void udder(Canvas canvas, View view, BodyPose body, int layer, float gain) {
        for (int teat = 0; teat < 2; teat++) {
            double x = (teat == 0 ? -.345 : -.545) + 1.2 * body.udderM();
            double top = (teat == 0 ? .560 : .535) + body.upM(-.45);
            Spline.Path path = Spline.through(
                    List.of(
                            new Spot(x + .020, top),
                            new Spot(x + .017, top - .045),
                            new Spot(x + .008, top - .073),
                            new Spot(x - .006, top - .073),
                            new Spot(x - .016, top - .045),
                            new Spot(x - .020, top)),
                    true,
                    3);
            view.project(path, 0);
            if (cover(canvas, path)) {
                canvas.print(layer, Texture.lit(UDDER_SKIN, .66f * gain));
            }
        }
        List<Spot> spots = new ArrayList<>();
        for (Spot spot : Outlines.UDDER) {
            double swing = body.udderM() * Grain.ease(.86, .55, spot.y());
            spots.add(body.bent(spot).plus(swing, 0));
        }
        Spline.Path path = Spline.through(spots, true, 5);
        view.project(path, 0);
        if (!cover(canvas, path)) {
            return;
        }
        Coverage box = canvas.coverage;
        int[] ink = canvas.plate();
        for (int y = 0; y < box.height; y++) {
            double ym = view.heightAt(y + box.top) - body.upM(-.45);
            for (int x = 0; x < box.width; x++) {
                if (box.share[box.rowStart(y) + x] <= .004f) {
                    continue;
                }
                double xm = view.forwardAt(x + box.left) - body.udderM();
                double lamp = view.lampSide() * (xm + .42) / .27;
                double low = (ym - .70) / .20;
                double light = .80 + .26 * low + .10 * lamp - .17 * lamp * lamp;
                // A crease between fore and hind quarter, a vein along the fore one.
                double crease = (xm + .455 + .10 * (ym - .52)) / .020;
                light -= .13 * Math.exp(-crease * crease) * Grain.ease(.68, .55, ym);
                double vein = (ym - .655 - .10 * (xm + .30) - .012 * Math.sin(26 * xm)) / .008;
                light += .05 * Math.exp(-vein * vein);
                ink[y * box.width + x] = Texture.lit(UDDER_SKIN, (float) Math.max(.38, light) * gain);
            }
        }
        canvas.print(layer);
    }

    private void tail(Canvas canvas, View view, BodyPose body, int layer, float gain) {
        double[] line = {
            -.62, 1.370, -.71, 1.400, -.785, 1.365, -.828, 1.300, -.850, 1.20, -.850, 1.08, -.842, .95, -.836, .82,
            -.834, .72, -.838, .60, -.846, .50
        };
        double[] half = {.018, .032, .035, .032, .027, .023, .020, .017, .019, .036, .016};
        List<Spot> front = new ArrayList<>();
        List<Spot> back = new ArrayList<>();
        List<Spot> centre = new ArrayList<>();
        for (int i = 0; i < half.length; i++) {
            double x = line[2 * i];
            double y = line[2 * i + 1];
            double hang = Math.max(0, (1.38 - y) / .88);
            double swing = body.tailM() * Math.pow(hang, 1.6);
            centre.add(new Spot(x + swing, y + body.upM(Math.max(-.80, x)) * (i < 4 ? 1 : .9)));
        }
        for (int i = 0; i < half.length; i++) {
            Spot a = centre.get(Math.max(0, i - 1));
            Spot b = centre.get(Math.min(half.length - 1, i + 1));
            double length = a.distance(b);
            double nx = -(b.y() - a.y()) / length;
            double ny = (b.x() - a.x()) / length;
            front.add(centre.get(i).plus(half[i] * nx, half[i] * ny));
            back.add(centre.get(i).plus(-half[i] * nx, -half[i] * ny));
        }
        Spline.Path path = Spline.through(front, false, 4);
        path.addAll(Spline.through(back, false, 4), true);
        view.project(path, 0);
        if (!cover(canvas, path)) {
            return;
        }
        int hair = lightTail ? Texture.bgr(188, 196, 202) : Texture.bgr(30, 28, 29);
        int brush = Texture.bgr(176, 187, 195);
        Coverage box = canvas.coverage;
        int[] ink = canvas.plate();
        for (int y = 0; y < box.height; y++) {
            double ym = view.heightAt(y + box.top);
            double white = Grain.ease(.80, .70, ym);
            double centreX = tailX(centre, ym);
            for (int x = 0; x < box.width; x++) {
                if (box.share[box.rowStart(y) + x] <= .004f) {
                    continue;
                }
                double xm = view.forwardAt(x + box.left);
                double strand = .05 * white * Math.sin(900 * xm + 23 * Math.sin(9 * ym));
                double across = ym < 1.32 ? Math.max(-1.3, Math.min(1.3, (xm - centreX) / .026)) : 0;
                double light = .94 + strand + .16 * across * view.lampSide() - .16 * across * across;
                light -= .18 * Grain.ease(.62, .50, ym);
                int colour = Texture.mix(hair, brush, (int) (256 * white));
                ink[y * box.width + x] = lit(colour, (float) light * gain);
            }
        }
        // Its root lies in the coat of the rump.
        for (int y = 0; y < box.height; y++) {
            int row = box.rowStart(y);
            for (int x = 0; x < box.width; x++) {
                double xm = view.forwardAt(x + box.left);
                if (xm > -.80) {
                    box.share[row + x] *= (float) Grain.ease(-.70, -.80, xm);
                }
            }
        }
        canvas.print(layer);
    }

    private static double tailX(List<Spot> centre, double y) {
        for (int i = 1; i < centre.size(); i++) {
            Spot a = centre.get(i - 1);
            Spot b = centre.get(i);
            if (b.y() < a.y() && y <= a.y() && y > b.y()) {
                return a.x() + (b.x() - a.x()) * (a.y() - y) / (a.y() - b.y());
            }
        }
        return centre.get(centre.size() - 1).x();
    }
}
