package levelback.clips.drawn.paint;

import java.util.Random;
import levelback.clips.drawn.CameraPlan;

/** Paints the empty lane: grooved wet concrete, kerb, splashed wall, rails and posts behind the cows, metre marks. */
final class Lane {
    private static final double WALL_Z_M = .92;
    private static final double KERB_Z_M = .80;
    private static final double KERB_M = .13;
    private static final double RAIL_Z_M = .60;
    private static final double[] RAILS_M = {1.28, .87, .47};

    private final CameraPlan camera;
    private final int width;
    private final int height;
    private final float[] plain;
    private final float[] wide;
    private final float[] blotch;
    private final float[] fine;
    private final double shiftM;

    private Lane(CameraPlan camera, long seed) {
        this.camera = camera;
        width = camera.widthPx();
        height = camera.heightPx();
        Random draws = new Random(seed * 7 + 3);
        double s = camera.pxPerM(0);
        plain = Grain.noise(width, height, .6, draws);
        fine = Grain.noise(width, height, .012 * s, draws);
        blotch = Grain.noise(width, height, .09 * s, draws);
        wide = Grain.noise(width, height, .35 * s, draws);
        shiftM = draws.nextDouble() * 1.8;
    }

    /** How bright the lamps are at a place of the lane: brightest a little left of the middle. */
    static double lamps(CameraPlan camera, double xM) {
        double d = (xM + .12 * camera.halfWidthM(0)) / camera.halfWidthM(0);
        return 1.03 - .13 * d * d;
    }

    /** The empty lane as blue, green, red bytes. */
    static byte[] paint(CameraPlan camera, long seed) {
        return new Lane(camera, seed).painted();
    }

    private byte[] painted() {
        byte[] bgr = new byte[width * height * 3];
        double[] c = new double[3];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                colour(x, y, c);
                int k = 3 * (y * width + x);
                for (int i = 0; i < 3; i++) {
                    bgr[k + i] = (byte) (int) Math.max(0, Math.min(235, c[i] + .5));
                }
            }
        }
        return bgr;
    }

    private void colour(int x, int y, double[] c) {
        int i = y * width + x;
        double kerbTop = camera.yM(y, KERB_Z_M);
        double wallY = camera.yM(y, WALL_Z_M);
        if (kerbTop >= KERB_M) {
            wall(camera.xM(x, WALL_Z_M), wallY, i, c);
        } else if (kerbTop >= 0) {
            kerb(camera.xM(x, KERB_Z_M), kerbTop, i, c);
        } else {
            floor(x, y, i, c);
        }
        rails(x, y, i, c);
        double lamp = lamps(camera, camera.xM(x, .5));
        double high = (double) y / height;
        lamp *= 1.02 - .20 * (high - .35) * (high - .35) * 2.2;
        for (int k = 0; k < 3; k++) {
            c[k] *= lamp;
        }
    }

    private void wall(double xm, double ym, int i, double[] c) {
        double v = 143 + 5.5 * wide[i] + 3.2 * blotch[i] + 1.6 * fine[i] + 1.2 * plain[i];
        double splash = Grain.ease(1.02, .88, ym + .05 * wide[i] + .03 * blotch[i]);
        v *= 1 - .22 * splash;
        v -= splash * 7 * Grain.ease(.4, 1.6, blotch[i] + .5 * fine[i]);
        v *= 1 - .16 * Grain.ease(.55, .12, ym);
        // Streaks that have run down.
        double streak = Grain.ease(1.0, 2.2, wide[(int) (Math.abs(xm * 60) % width)] + .3 * fine[i]);
        v *= 1 - .05 * streak;
        // Shuttering joints of the poured wall, hardly seen.
        v *= 1 - .05 * line(frac((xm + shiftM) / 2.4) * 2.4, 0, .010) - .04 * line(ym, 1.62, .010);
        // A short tick at every metre.
        double toMetre = Math.abs(xm - Math.rint(xm));
        if (toMetre < .014 && ym > 1.02 && ym < 1.10) {
            v *= .45;
        }
        c[0] = v * .975;
        c[1] = v * 1.0;
        c[2] = v * 1.005;
    }

    private void kerb(double xm, double ym, int i, double[] c) {
        double v = 122 + 3 * wide[i] + 4 * blotch[i] + 2 * fine[i];
        v *= ym > KERB_M - .018 ? 1.16 : .90 - .25 * Grain.ease(.05, 0, ym);
        // The board of quarter metres along it.
        if (ym > .035 && ym < .085) {
            v *= Math.floorMod((long) Math.floor(xm / .25), 2L) == 0 ? 1.13 : .72;
        }
        c[0] = v * .97;
        c[1] = v;
        c[2] = v * 1.01;
    }

    private void floor(int x, int y, int i, double[] c) {
        double s = (y - camera.rowPx(1.15, 0)) / 1.15;
        double z = camera.focalPx() / s - camera.distanceM();
        double xm = (x - width / 2.0 + .5) / s;
        double v = 122 + 6 * noiseAt(wide, xm, z) + 6 * noiseAt(blotch, xm, 2.2 * z) + 3 * fine[i] + 2.4 * plain[i];
        // Grooves along the lane every 8 cm, softer with distance.
        double groove = line(frac((z + 10) / .08) * .08, .04, .011);
        v *= 1 - .16 * groove * Grain.ease(120, 210, s);
        double joint = Math.abs(frac((xm + shiftM) / 1.8) * 1.8 - .9);
        v *= 1 - .42 * Math.exp(-Math.pow(joint / .013, 2));
        double wet = Grain.ease(.35, .85, noiseAt(wide, xm * .9 + 3, z * 2.6 + 1) + .35 * noiseAt(blotch, xm, 2 * z));
        v *= 1 - .36 * wet;
        double sheen = wet * Grain.ease(.2, 1.4, noiseAt(blotch, xm * .6 + 1, z * 4));
        v += 30 * sheen * Grain.ease(300, 180, s);
        v *= 1 - .35 * Grain.ease(KERB_Z_M - .10, KERB_Z_M, z);
        c[0] = v * .975;
        c[1] = v * 1.005;
        c[2] = v * 1.01;
    }

    private double noiseAt(float[] field, double xm, double zm) {
        double s = camera.pxPerM(0);
        int x = Math.floorMod((int) Math.round(xm * s + 20_000), 2 * width);
        int y = Math.floorMod((int) Math.round(zm * s + 20_000), 2 * height);
        // Mirrored at its ends, so that it repeats without a seam.
        return field[(y < height ? y : 2 * height - 1 - y) * width + (x < width ? x : 2 * width - 1 - x)];
    }

    private void rails(int x, int y, int i, double[] c) {
        double xm = camera.xM(x, RAIL_Z_M);
        double ym = camera.yM(y, RAIL_Z_M);
        double post = frac((xm + shiftM + 60) / 2.1) * 2.1 - 1.05;
        double half = .5 / camera.pxPerM(RAIL_Z_M);
        double shadow = 0;
        for (double rail : RAILS_M) {
            shadow = Math.max(shadow, .16 * Math.exp(-Math.pow((ym - rail + .10) / .035, 2)));
        }
        if (ym > KERB_M - .2) {
            dim(c, 1 - shadow);
        }
        double across = post / .034;
        double cover = Grain.ease(.034 + half, .034 - half, Math.abs(post)) * (ym > -.02 && ym < 1.36 ? 1 : 0);
        if (cover > 0) {
            tube(c, cover, across * -1, 2.0 * fine[i]);
        }
        for (double rail : RAILS_M) {
            double d = ym - rail;
            double on = Grain.ease(.027 + half, .027 - half, Math.abs(d));
            if (on > 0) {
                tube(c, on, d / .027, 1.6 * fine[i]);
            }
        }
    }

    private static void dim(double[] c, double f) {
        for (int k = 0; k < 3; k++) {
            c[k] *= f;
        }
    }

    /** A galvanised tube: lit from above. */
    private static void tube(double[] c, double cover, double across, double speck) {
        double a = Math.max(-1, Math.min(1, across));
        double v = 112 + 46 * a - 34 * a * a + 40 * Math.exp(-Math.pow((a - .45) / .22, 2)) + speck;
        c[0] += cover * (v * 1.00 - c[0]);
        c[1] += cover * (v * 1.00 - c[1]);
        c[2] += cover * (v * .985 - c[2]);
    }

    private static double line(double v, double at, double wide) {
        double d = (v - at) / wide;
        return Math.exp(-d * d);
    }

    private static double frac(double v) {
        return v - Math.floor(v);
    }
}
