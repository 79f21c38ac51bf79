package levelback.clips.drawn.paint;

import java.util.Random;
import levelback.clips.drawn.WalkerTraits;

/** Bakes a face in the head frame: origin at the poll, x down the face, y to the forehead. */
final class Face {
    private static final double PX_PER_M = 300;

    private Face() {}

    static Texture bake(WalkerTraits traits, int lampSide) {
        Texture t = new Texture(-.10, .11, .70, .42, PX_PER_M);
        Random draws = new Random(traits.coatSeed() * 31 + 5);
        Spline.Path outline = Spline.through(Outlines.HEAD, true, 8);
        for (int i = 0; i < outline.size; i++) {
            outline.x[i] = (outline.x[i] - t.leftM) * t.pxPerM;
            outline.y[i] = (t.topM - outline.y[i]) * t.pxPerM;
        }
        float[] mask = Coat.mask(outline, t.width, t.height);
        // The head hangs at some 48 degrees: what is up in the picture lies between forehead and poll.
        headLight(t, mask, lampSide);
        float[] hair = Grain.noise(t.width, t.height, .9, draws);
        float[] ragged = Grain.noise(t.width, t.height, 5, draws);
        double blazeFrom = .02 + .05 * draws.nextDouble();
        double blazeDepth = .030 + .035 * draws.nextDouble();
        for (int y = 0; y < t.height; y++) {
            for (int x = 0; x < t.width; x++) {
                int i = y * t.width + x;
                double xm = t.xM(x);
                double ym = t.yM(y);
                double[] c = {30, 28, 29};
                if (traits.star()) {
                    double edge = forehead(xm) - blazeDepth * (1 - .35 * Grain.ease(.2, .42, xm)) + .005 * ragged[i];
                    double white = Grain.ease(edge - .006, edge + .006, ym)
                            * Grain.ease(blazeFrom - .02, blazeFrom + .02, xm + .006 * ragged[i]);
                    mix(c, white, 208, 216, 221);
                }
                // Muzzle: bare skin, paler; a dark seam where the hair ends.
                double muzzle = Grain.ease(.435, .465, xm + .010 * ragged[i] - .12 * (ym + .05));
                mix(c, muzzle * .92, 128, 140, 168);
                mix(c, .55 * blob(xm, ym, .505, -.036, .017, .011, 30), 26, 26, 34); // nostril
                mix(c, .9 * blob(xm, ym, .507, -.034, .011, .006, 35), 14, 14, 18);
                mix(c, .75 * stroke(xm, ym, .525, -.098, .405, -.100, .0035), 40, 40, 48); // mouth
                mix(c, .35 * stroke(xm, ym, .06, -.165, .24, -.185, .010), 12, 12, 12); // jaw
                mix(c, .22 * stroke(xm, ym, .20, -.055, .40, -.060, .012), 78, 80, 84); // cheek bone
                mix(c, .16 * blob(xm, ym, .11, -.15, .06, .05, 0), 88, 88, 92); // jowl
                // Eye: a dim rim of lid, the ball, a glint under 3 mm.
                mix(c, .30 * blob(xm, ym, .157, -.046, .036, .021, -8), 66, 66, 72);
                mix(c, hard(xm, ym, .157, -.050, .0225, .0115, -8), 10, 10, 12);
                mix(c, .70 * hard(xm, ym, .151, -.046, .0016, .0014, 0), 150, 150, 150);
                double hairy = 1 + .03 * hair[i];
                t.colour[i] = Texture.bgr(eight(c[0] * hairy), eight(c[1] * hairy), eight(c[2] * hairy));
            }
        }
        return t;
    }

    private static void headLight(Texture t, float[] mask, int lampSide) {
        Texture turned = t;
        Coat.formLight(turned, mask, .05, .45, lampSide);
        float[] byForehead = t.light.clone();
        int w = t.width;
        float[] soft = Grain.blurred(mask, w, t.height, .05 * t.pxPerM);
        double scale = .45 * .05 * t.pxPerM * Math.sqrt(2 * Math.PI);
        for (int y = 0; y < t.height; y++) {
            for (int x = 0; x < w; x++) {
                double gx = (soft[y * w + Math.min(w - 1, x + 1)] - soft[y * w + Math.max(0, x - 1)]) / 2;
                double byPoll = 1 + scale * .7 * gx;
                int i = y * w + x;
                t.light[i] = (float) Math.max(.35, Math.min(1.25, .65 * byForehead[i] + .35 * byPoll));
            }
        }
    }

    /** Height of the forehead's line above the axis of the face. */
    private static double forehead(double x) {
        return x < .10
                ? .030 + .18 * Math.min(.1, Math.max(0, x))
                : x < .26 ? .048 - .13 * (x - .10) : .026 - .06 * (x - .26);
    }

    private static void mix(double[] c, double share, double b, double g, double r) {
        c[0] += share * (b - c[0]);
        c[1] += share * (g - c[1]);
        c[2] += share * (r - c[2]);
    }

    private static double radius(double x, double y, double cx, double cy, double rx, double ry, double deg) {
        double c = Math.cos(Math.toRadians(deg));
        double s = Math.sin(Math.toRadians(deg));
        double u = (c * (x - cx) + s * (y - cy)) / rx;
        double v = (-s * (x - cx) + c * (y - cy)) / ry;
        return u * u + v * v;
    }

    private static double blob(double x, double y, double cx, double cy, double rx, double ry, double deg) {
        return Math.exp(-radius(x, y, cx, cy, rx, ry, deg));
    }

    private static double hard(double x, double y, double cx, double cy, double rx, double ry, double deg) {
        return Grain.ease(1.25, .75, radius(x, y, cx, cy, rx, ry, deg));
    }

    private static double stroke(double x, double y, double ax, double ay, double bx, double by, double wide) {
        double f = ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / ((bx - ax) * (bx - ax) + (by - ay) * (by - ay));
        double k = Math.max(0, Math.min(1, f));
        double d = Math.hypot(x - ax - k * (bx - ax), y - ay - k * (by - ay));
        return Math.exp(-d * d / (wide * wide));
    }

    private static int eight(double v) {
        return (int) Math.max(0, Math.min(255, v + .5));
    }
}
