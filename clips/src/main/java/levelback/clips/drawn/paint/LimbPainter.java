package levelback.clips.drawn.paint;

import levelback.clips.drawn.gait.LimbPose;
import levelback.clips.drawn.gait.Spot;
import levelback.scoring.value.Leg;

/**
 * Paints a limb as a strip of quads that carries the coat along with the skin. Towards the trunk the strip takes the
 * trunk's own coat and light and fades into it, so that there is no seam.
 */
final class LimbPainter {
    private static final int HOOF = Texture.bgr(44, 52, 60);
    private static final int WALL = Texture.bgr(104, 108, 110);

    private static final int ACROSS_STEPS = 64;
    private static final int STATION_STEPS = 16;
    private static final int STATIONS = 15;
    private final float[] foreLight;
    private final float[] hindLight;
    private final Canvas canvas;
    private final View view;
    private final Texture coat;
    private final float gain;

    LimbPainter(Canvas canvas, View view, Texture coat, float gain) {
        this.canvas = canvas;
        this.view = view;
        this.coat = coat;
        this.gain = gain;
        foreLight = lights(true, view.lampSide());
        hindLight = lights(false, view.lampSide());
    }

    private static final float[][] LIGHTS = {
        lightTable(false, -1), lightTable(true, -1), lightTable(false, 1), lightTable(true, 1)
    };

    private static float[] lights(boolean fore, int lampSide) {
        return LIGHTS[(lampSide + 1) + (fore ? 1 : 0)];
    }

    private static float[] lightTable(boolean fore, int lampSide) {
        float[] table = new float[(STATIONS * STATION_STEPS + 1) * (ACROSS_STEPS + 1)];
        for (int i = 0; i <= STATIONS * STATION_STEPS; i++) {
            for (int k = 0; k <= ACROSS_STEPS; k++) {
                table[i * (ACROSS_STEPS + 1) + k] =
                        light(fore, 2f * k / ACROSS_STEPS - 1, (float) i / STATION_STEPS, lampSide);
            }
        }
        return table;
    }

    /**
     * Paints one limb.
     *
     * @param pose at the middle of the exposure
     * @param early at its beginning, {@code late} at its end: a limb in swing is smeared between the two
     */
    void paint(LimbPose pose, LimbPose early, LimbPose late, boolean near, int layer) {
        double side = near ? -1 : 1;
        LimbShape shape = LimbShape.of(pose);
        Spline.Path[] limbs;
        Spline.Path[] hooves;
        if (pose.planted()) {
            limbs = new Spline.Path[] {outline(shape, side)};
            hooves = new Spline.Path[] {hoof(pose, side)};
        } else {
            limbs = new Spline.Path[] {outline(LimbShape.of(early), side), outline(LimbShape.of(late), side)};
            hooves = new Spline.Path[] {hoof(early, side), hoof(late, side)};
        }
        if (cover(hooves)) {
            paintHoof(near);
            canvas.print(layer);
        }
        if (cover(limbs)) {
            canvas.plate();
            ink(pose.leg(), shape, side, near);
            if (near) {
                fade(pose.leg(), layer);
            }
            canvas.print(layer);
        }
    }

    private boolean cover(Spline.Path[] paths) {
        if (!canvas.coverage.beginAround(paths, canvas.width, canvas.height)) {
            return false;
        }
        for (Spline.Path path : paths) {
            canvas.coverage.add(path, 1f / paths.length);
        }
        canvas.coverage.finish();
        return true;
    }

    private Spline.Path outline(LimbShape shape, double side) {
        Spline.Path path = new Spline.Path(shape.front.size + shape.back.size);
        path.addAll(shape.front, false);
        path.addAll(shape.back, true);
        view.project(path, side);
        return path;
    }

    private Spline.Path hoof(LimbPose pose, double side) {
        Spline.Path path = Spline.through(Outlines.HOOF, true, 3);
        double c = Math.cos(pose.pitchRad());
        double s = Math.sin(pose.pitchRad());
        for (int i = 0; i < path.size; i++) {
            double x = path.x[i];
            double y = Math.max(0, path.y[i]);
            path.x[i] = pose.toe().x() + c * x + s * y;
            path.y[i] = pose.toe().y() - s * x + c * y;
        }
        view.project(path, side);
        return path;
    }

    private void paintHoof(boolean near) {
        Coverage c = canvas.coverage;
        int[] ink = canvas.plate();
        for (int y = 0; y < c.height; y++) {
            float light = gain * (1.22f - .55f * y / c.height);
            int colour = Texture.lit(HOOF, light);
            if (!near) {
                colour = Texture.mix(Texture.lit(colour, .66f), WALL, 46);
            }
            java.util.Arrays.fill(ink, y * c.width, (y + 1) * c.width, colour);
        }
    }

    /** Near limbs fade into the trunk. */
    private void fade(Leg leg, int layer) {
        Coverage c = canvas.coverage;
        double low = leg.isFore() ? .90 : .94;
        double high = leg.isFore() ? 1.16 : 1.24;
        int trunk = (layer & ~15) + CowPainter.TRUNK;
        for (int y = 0; y < c.height; y++) {
            double ym = view.heightAt(y + c.top);
            float onTrunk = (float) Grain.ease(high, low, ym);
            if (onTrunk < 1) {
                // Where the limb stands out from the trunk it keeps its own edge for longer.
                float beside = (float) Grain.ease(high + .02, high - .10, ym);
                int row = c.rowStart(y);
                int pixel = (y + c.top) * canvas.width + c.left;
                for (int x = 0; x < c.width; x++) {
                    int owner = canvas.owner[pixel + x] & 0xff;
                    c.share[row + x] *= owner == trunk ? onTrunk : beside;
                }
            }
        }
    }

    private void ink(Leg leg, LimbShape shape, double side, boolean near) {
        LimbShape rest = LimbShape.atRest(leg);
        int n = shape.front.size;
        float[][] above = section(leg, shape, rest, 0, side);
        for (int i = 1; i < n; i++) {
            float[][] below = section(leg, shape, rest, i, side);
            triangle(above[0], above[1], below[0], leg, near);
            triangle(above[1], below[1], below[0], leg, near);
            above = below;
        }
    }

    // Vertex: column, row, u and v in the coat, across (1 front, -1 back), own weight, station.
    private float[][] section(Leg leg, LimbShape shape, LimbShape rest, int i, double side) {
        float[][] two = new float[2][];
        for (int k = 0; k < 2; k++) {
            Spline.Path path = k == 0 ? shape.front : shape.back;
            Spline.Path other = k == 0 ? shape.back : shape.front;
            Spline.Path restPath = k == 0 ? rest.front : rest.back;
            // A little wider than the limb, so that its soft edge has colour.
            double x = path.x[i] + .10 * (path.x[i] - other.x[i]);
            double y = path.y[i] + .10 * (path.y[i] - other.y[i]);
            double restY = restPath.y[i];
            double own = Grain.ease(leg.isFore() ? .96 : .98, leg.isFore() ? .62 : .58, restY);
            double column = view.column(x, y, side);
            double row = view.row(y, side);
            Spot onTrunk = view.trunkAtRest(column, row);
            double u = onTrunk.x() + own * (restPath.x[i] - onTrunk.x());
            double v = onTrunk.y() + own * (restY - onTrunk.y());
            two[k] = new float[] {
                (float) column,
                (float) row,
                (float) ((u - coat.leftM) * coat.pxPerM),
                (float) ((coat.topM - v) * coat.pxPerM),
                k == 0 ? 1.2f : -1.2f,
                (float) own,
                (float) i / LimbShape.PER_SPAN
            };
        }
        return two;
    }

    private void triangle(float[] a, float[] b, float[] c, Leg leg, boolean near) {
        Coverage box = canvas.coverage;
        float area = (b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1]);
        if (Math.abs(area) < 1e-4f) {
            return;
        }
        int left = (int) Math.max(box.left, Math.floor(Math.min(a[0], Math.min(b[0], c[0]))));
        int right = (int) Math.min(box.left + box.width - 1, Math.ceil(Math.max(a[0], Math.max(b[0], c[0]))));
        int top = (int) Math.max(box.top, Math.floor(Math.min(a[1], Math.min(b[1], c[1]))));
        int bottom = (int) Math.min(box.top + box.height - 1, Math.ceil(Math.max(a[1], Math.max(b[1], c[1]))));
        float[] lights = leg.isFore() ? foreLight : hindLight;
        for (int y = top; y <= bottom; y++) {
            int row = box.rowStart(y - box.top);
            // Far limbs vanish into the shade under the body.
            float shade = near ? 1 : (float) (.60 - .24 * Grain.ease(.42, .74, view.heightAt(y)));
            for (int x = left; x <= right; x++) {
                float wb = ((x - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (y - a[1])) / area;
                float wc = ((b[0] - a[0]) * (y - a[1]) - (x - a[0]) * (b[1] - a[1])) / area;
                float wa = 1 - wb - wc;
                if (wa < -.02f || wb < -.02f || wc < -.02f || box.share[row + x - box.left] < .004f) {
                    continue;
                }
                float u = wa * a[2] + wb * b[2] + wc * c[2];
                float v = wa * a[3] + wb * b[3] + wc * c[3];
                float across = wa * a[4] + wb * b[4] + wc * c[4];
                float own = wa * a[5] + wb * b[5] + wc * c[5];
                float station = wa * a[6] + wb * b[6] + wc * c[6];
                int k = (int) ((Math.max(-1, Math.min(1, across)) + 1) * (ACROSS_STEPS / 2) + .5f);
                int i = (int) (Math.max(0, Math.min(STATIONS, station)) * STATION_STEPS + .5f);
                float limb = lights[i * (ACROSS_STEPS + 1) + k];
                float light = coat.lightAt(u, v) * (1 - own) + limb * own;
                int colour = CowPainter.lit(coat.colourAt(u, v), light * gain);
                if (!near) {
                    colour = Texture.mix(Texture.lit(colour, shade), WALL, 46);
                }
                canvas.ink[(y - box.top) * box.width + x - box.left] = colour;
            }
        }
    }

    /** Light on a limb: round, lit from the lamp's side, with tendon, grooves and bones. */
    private static float light(boolean fore, float a, float station, int lampSide) {
        float lamp = a * lampSide;
        float light = 1.0f + .13f * lamp - .13f * a * a - .24f * a * a * a * a;
        // Lower limbs stand in the shade of the body.
        light *= station < 6 ? .92f : .96f;
        if (fore) {
            light += .11f * bump(station, 6.3f, .55f) * bump(a, .35f, .45f); // carpus
            light -= .10f * bump(station, 7.3f, .35f) * bump(a, -.6f, .5f); // below it
            light -= .15f * bump(a, -.30f, .14f) * within(station, 7.7f, 10.6f); // tendon
            light -= .10f * bump(a, .15f, .16f) * within(station, 2.6f, 5.4f); // between the forearm's muscles
        } else {
            light += .12f * bump(station, 6.6f, .55f) * bump(a, -.35f, .5f); // hock
            light -= .20f * bump(a, -.35f, .17f) * within(station, 4.4f, 6.3f); // groove above the hock
            light -= .15f * bump(a, -.30f, .14f) * within(station, 7.6f, 10.6f); // tendon
            light -= .08f * bump(a, .20f, .18f) * within(station, 3.0f, 5.0f);
        }
        light += .07f * bump(station, 11f, .45f); // fetlock
        light -= .10f * bump(station, 11.6f, .35f) * bump(a, -.8f, .5f);
        return Math.max(.35f, light);
    }

    private static float bump(float v, float at, float wide) {
        float d = (v - at) / wide;
        return d > 3 || d < -3 ? 0 : (float) Math.exp(-d * d);
    }

    private static float within(float v, float from, float to) {
        return (float) (Grain.ease(from - .4, from + .4, v) * Grain.ease(to + .4, to - .4, v));
    }
}
