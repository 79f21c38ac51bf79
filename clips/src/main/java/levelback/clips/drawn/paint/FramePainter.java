package levelback.clips.drawn.paint;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentMap;
import levelback.clips.drawn.CameraPlan;
import levelback.clips.drawn.RecordingPlan;
import levelback.clips.drawn.WalkPlan;
import levelback.clips.drawn.gait.LimbPose;
import levelback.clips.drawn.gait.Pose;
import levelback.clips.drawn.gait.Spot;
import levelback.clips.drawn.gait.Walker;
import levelback.scoring.value.Leg;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.opencv.global.opencv_core;
import org.bytedeco.opencv.opencv_core.Mat;

/**
 * Paints any frame of a recording, and says what in it is hidden. A frame depends on the plan and its number alone, so that
 * several threads may paint, each with its own {@link Easel}.
 */
public final class FramePainter implements AutoCloseable {
    private static final double HALF_SHUTTER_S = 1.0 / 250 / 4;
    private static final int MOST_COWS = 7;

    private final RecordingPlan plan;
    private final CameraPlan camera;
    private final List<Walker> walkers = new ArrayList<>();
    private final double[] leaves;
    private final ConcurrentMap<Integer, CowPainter> painters = new ConcurrentHashMap<>();
    private final byte[] lane;
    private final Film film;

    /**
     * What one frame shows of one cow.
     *
     * @param walk index of the walk in the plan
     * @param pixels how many pixels she owns
     * @param points where her points are
     */
    public record Shown(int walk, int pixels, List<Point> points) {
        public Shown {
            points = List.copyOf(points);
        }
    }

    /**
     * A point of hers.
     *
     * @param name as the {@code track} command names it
     * @param alongM along the way she walks
     * @param heightM above the floor
     * @param xPx column; may be outside the picture
     * @param yPx row
     * @param hidden whether something painted later covers it
     */
    public record Point(String name, double alongM, double heightM, double xPx, double yPx, boolean hidden) {}

    /** Canvas and film of one painting thread. */
    public final class Easel implements AutoCloseable {
        final Canvas canvas = new Canvas(camera.widthPx(), camera.heightPx());
        private final Mat exposed = film.blank();

        /** The frame painted last: blue, green, red bytes, rows packed. Valid until the next one is painted. */
        public BytePointer bgr() {
            return exposed.data();
        }

        /** Copies the frame painted last. */
        public void copyTo(byte[] into) {
            try (BytePointer data = new BytePointer(exposed.data())) {
                data.get(into, 0, camera.widthPx() * camera.heightPx() * 3);
            }
        }

        @Override
        public void close() {
            exposed.close();
        }
    }

    /** Prepares to paint a recording. */
    public FramePainter(RecordingPlan plan) {
        this.plan = plan;
        camera = plan.camera();
        // Frames are painted side by side already; more threads inside one would only get in each other's way.
        opencv_core.setNumThreads(1);
        leaves = new double[plan.walks().size()];
        for (WalkPlan walk : plan.walks()) {
            Walker walker = new Walker(walk, camera.halfWidthM(0));
            leaves[walkers.size()] = walker.leaveTimeS();
            walkers.add(walker);
        }
        film = new Film(camera.widthPx(), camera.heightPx(), plan.seed());
        lane = film.softened(Lane.paint(camera, plan.seed()));
    }

    /** The walks, laid out. */
    public List<Walker> walkers() {
        return List.copyOf(walkers);
    }

    /** An easel for one thread. */
    public Easel easel() {
        return new Easel();
    }

    /** Paints a frame and tells what it shows, cow by cow in the plan's order. */
    public List<Shown> paint(int frame, Easel easel) {
        double timeS = plan.rate().timeS(frame);
        Canvas canvas = easel.canvas;
        canvas.beginWith(lane);
        List<Integer> here = new ArrayList<>();
        for (int i = 0; i < walkers.size() && here.size() < MOST_COWS; i++) {
            if (timeS > walkers.get(i).enterTimeS() - 1 && timeS < leaves[i] + 1) {
                here.add(i);
            } else if (timeS > leaves[i] + 5) {
                // Threads may lag a little behind; none is that late.
                painters.remove(i);
            }
        }
        List<Pose> poses = new ArrayList<>();
        for (int i : here) {
            Pose pose = walkers.get(i).pose(timeS);
            poses.add(pose);
            painter(i).paintShadow(canvas, pose);
        }
        for (int n = 0; n < here.size(); n++) {
            Walker walker = walkers.get(here.get(n));
            double middle = walker.plan().direction().sign() * poses.get(n).alongM();
            painter(here.get(n))
                    .paint(
                            canvas,
                            poses.get(n),
                            walker.pose(timeS - HALF_SHUTTER_S),
                            walker.pose(timeS + HALF_SHUTTER_S),
                            n + 1,
                            (float) Lane.lamps(camera, Math.max(-3, Math.min(3, middle))));
        }
        List<Shown> shown = new ArrayList<>();
        for (int n = 0; n < here.size(); n++) {
            shown.add(shown(here.get(n), n + 1, poses.get(n), canvas));
        }
        film.expose(canvas, frame, timeS, easel.exposed);
        return shown;
    }

    private CowPainter painter(int walk) {
        return painters.computeIfAbsent(
                walk, i -> new CowPainter(camera, plan.walks().get(i)));
    }

    private Shown shown(int walk, int slot, Pose pose, Canvas canvas) {
        int pixels = 0;
        for (int y = canvas.dirtyTop; y < canvas.dirtyBottom; y++) {
            int row = y * canvas.width;
            for (int x = canvas.dirtyLeft; x < canvas.dirtyRight; x++) {
                if ((canvas.owner[row + x] & 0xff) >> 4 == slot) {
                    pixels++;
                }
            }
        }
        WalkPlan cow = plan.walks().get(walk);
        View view = painter(walk).view(pose);
        double size = cow.traits().sizeFactor();
        int direction = cow.direction().sign();
        List<Point> points = new ArrayList<>();
        for (Leg leg : Leg.values()) {
            LimbPose limb = pose.limb(leg);
            int layer = CowPainter.layerOf(leg, direction);
            double side = layer >= CowPainter.NEAR_HIND ? -1 : 1;
            int on = 16 * slot + layer;
            points.add(point("hoof_" + leg, limb.toe(), side, pose, view, size, canvas, on));
            points.add(point("fetlock_" + leg, limb.fetlock(), side, pose, view, size, canvas, on));
            points.add(point(
                    (leg.isFore() ? "carpus_" : "hock_") + leg, limb.joint(), side, pose, view, size, canvas, on));
        }
        int trunk = 16 * slot + CowPainter.TRUNK;
        points.add(point("poll", pose.body().poll(), 0, pose, view, size, canvas, 16 * slot + CowPainter.NEAR_EAR));
        points.add(point("withers", pose.body().bent(new Spot(.50, 1.455)), 0, pose, view, size, canvas, trunk));
        points.add(point("back", pose.body().bent(new Spot(.10, 1.425)), 0, pose, view, size, canvas, trunk));
        points.add(point("loin", pose.body().bent(new Spot(-.22, 1.43)), 0, pose, view, size, canvas, trunk));
        points.add(point("hook", pose.body().bent(new Spot(-.42, 1.40)), 0, pose, view, size, canvas, trunk));
        points.add(point("tailhead", pose.body().bent(new Spot(-.74, 1.425)), 0, pose, view, size, canvas, trunk + 1));
        return new Shown(walk, pixels, points);
    }

    private static Point point(
            String name, Spot spot, double side, Pose pose, View view, double size, Canvas canvas, int layer) {
        double column = view.column(spot.x(), spot.y(), side);
        double row = view.row(spot.y(), side);
        int x = (int) Math.rint(column);
        int y = (int) Math.rint(row);
        boolean hidden = x >= 0
                && y >= 0
                && x < canvas.width
                && y < canvas.height
                && (canvas.owner[y * canvas.width + x] & 0xff) > layer;
        return new Point(name, pose.alongM() + size * spot.x(), size * spot.y(), column, row, hidden);
    }

    @Override
    public void close() {
        film.close();
    }
}
