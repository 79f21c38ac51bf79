package levelback.clips.drawn.paint;

import java.util.Arrays;
import java.util.Random;
import levelback.clips.drawn.WalkerTraits;
import levelback.clips.drawn.gait.Walker;

/**
 * Bakes a coat: patches by thresholded noise, hair, mud, and the light of the trunk's form with its hollows and bones. One
 * coat lies in the cow frame and moves with the skin.
 */
final class Coat {
    static final double LEFT_M = -1.12;
    static final double TOP_M = 1.72;
    private static final double WIDTH_M = 2.52;
    private static final double HEIGHT_M = 1.74;
    private static final double PX_PER_M = 200;

    private static final double DARK_B = 28;
    private static final double DARK_G = 26;
    private static final double DARK_R = 27;
    private static final double WHITE_B = 192;
    private static final double WHITE_G = 200;
    private static final double WHITE_R = 206;

    private Coat() {}

    /**
     * Bakes her coat.
     *
     * @param traits whose
     * @param lampSide 1 if the lamp stands ahead of her, -1 if behind: its place in the picture is fixed
     */
    static Texture bake(WalkerTraits traits, int lampSide) {
        Texture texture = new Texture(LEFT_M, TOP_M, WIDTH_M, HEIGHT_M, PX_PER_M);
        Random draws = new Random(traits.coatSeed() * 0x5DEECE66DL + 11);
        int w = texture.width;
        int h = texture.height;
        float[] mask = trunkMask(texture);
        float[] wide = Grain.noise(w, h, .17 * PX_PER_M, draws);
        float[] middle = Grain.noise(w, h, .07 * PX_PER_M, draws);
        float[] fine = Grain.noise(w, h, .022 * PX_PER_M, draws);
        float[] hair = Grain.noise(w, h, .8, draws);
        float[] dirt = Grain.noise(w, h, .03 * PX_PER_M, draws);
        double legs = traits.darkShare() > .62 && draws.nextDouble() < .5 ? 1.5 : 2.6;
        float[] n = new float[w * h];
        float[] onTrunk = new float[w * h];
        int count = 0;
        for (int y = 0; y < h; y++) {
            double ym = texture.yM(y);
            for (int x = 0; x < w; x++) {
                int i = y * w + x;
                // Where the white of the legs begins is ragged.
                double edge = ym - .05 + .085 * middle[i] + .06 * wide[i] + .02 * fine[i];
                double low = legs * Grain.ease(.84, .50, edge) + 1.2 * Grain.ease(.45, .20, ym);
                double v = wide[i] + .42 * middle[i] + .12 * fine[i];
                v += .9 * Grain.ease(.45, 1.0, texture.xM(x)) - low;
                n[i] = (float) v;
                if (mask[i] > .5) {
                    onTrunk[count++] = n[i];
                }
            }
        }
        Arrays.sort(onTrunk, 0, count);
        double cut = onTrunk[(int) Math.min(count - 1, Math.max(0, (1 - traits.darkShare()) * count))];
        for (int y = 0; y < h; y++) {
            double ym = texture.yM(y);
            double muddy = Grain.ease(.50, .08, ym);
            for (int x = 0; x < w; x++) {
                int i = y * w + x;
                // Hair changes colour over a centimetre and a half, however steep the noise is.
                double gx = n[y * w + Math.min(w - 1, x + 1)] - n[y * w + Math.max(0, x - 1)];
                double gy = n[Math.min(h - 1, y + 1) * w + x] - n[Math.max(0, y - 1) * w + x];
                double soft = Math.max(.02, .75 * Math.hypot(gx, gy)) * (1 + .25 * Math.abs(hair[i]));
                double dark = Grain.ease(cut - soft, cut + soft, n[i]);
                double hairy = 1 + .03 * hair[i];
                double b = (WHITE_B + dark * (DARK_B - WHITE_B)) * hairy;
                double g = (WHITE_G + dark * (DARK_G - WHITE_G)) * hairy;
                double r = (WHITE_R + dark * (DARK_R - WHITE_R)) * hairy;
                double mud = Math.max(0, Math.min(.75, muddy * (.28 + .30 * dirt[i])));
                // Stale bedding on the belly and thighs too, but thin.
                mud = Math.max(mud, .16 * Grain.ease(1.3, 2.2, dirt[i]) * Grain.ease(1.05, .75, ym));
                b += mud * (66 - b);
                g += mud * (84 - g);
                r += mud * (98 - r);
                texture.colour[i] = Texture.bgr(eight(b), eight(g), eight(r));
            }
        }
        light(texture, mask, lampSide);
        return texture;
    }

    private static int eight(double v) {
        return (int) Math.max(0, Math.min(255, v + .5));
    }

    private static float[] trunkMask(Texture texture) {
        Spline.Path outline = Spline.through(Outlines.trunk(Walker.standing().body()), true, 6);
        for (int i = 0; i < outline.size; i++) {
            outline.x[i] = (outline.x[i] - texture.leftM) * texture.pxPerM;
            outline.y[i] = (texture.topM - outline.y[i]) * texture.pxPerM;
        }
        return mask(outline, texture.width, texture.height);
    }

    /** The covered share of each pixel of a picture. */
    static float[] mask(Spline.Path outline, int width, int height) {
        float[] mask = new float[width * height];
        Coverage coverage = new Coverage();
        if (coverage.beginAround(new Spline.Path[] {outline}, width, height)) {
            coverage.add(outline, 1);
            coverage.finish();
            for (int y = 0; y < coverage.height; y++) {
                for (int x = 0; x < coverage.width; x++) {
                    mask[(y + coverage.top) * width + x + coverage.left] = coverage.at(x, y);
                }
            }
        }
        return mask;
    }

    /** Light by the slope of the blurred outline: from above, a little from the lamp's side. */
    static void formLight(Texture texture, float[] mask, double sigmaM, double strength, int lampSide) {
        int w = texture.width;
        int h = texture.height;
        float[] soft = Grain.blurred(mask, w, h, sigmaM * texture.pxPerM);
        // A straight edge has slope 1/(σ√2π); scaled so that it counts as 1.
        double scale = strength * sigmaM * texture.pxPerM * Math.sqrt(2 * Math.PI);
        for (int y = 0; y < h; y++) {
            for (int x = 0; x < w; x++) {
                float left = soft[y * w + Math.max(0, x - 1)];
                float right = soft[y * w + Math.min(w - 1, x + 1)];
                float up = soft[Math.max(0, y - 1) * w + x];
                float down = soft[Math.min(h - 1, y + 1) * w + x];
                double slope = -.35 * lampSide * (right - left) / 2 + .92 * (down - up) / 2;
                texture.light[y * w + x] = (float) Math.max(.30, Math.min(1.30, 1 + scale * slope));
            }
        }
    }

    private static void light(Texture t, float[] mask, int lampSide) {
        formLight(t, mask, .16, .50, lampSide);
        float[] near = t.light.clone();
        formLight(t, mask, .05, .22, lampSide);
        for (int i = 0; i < near.length; i++) {
            t.light[i] = Math.max(.30f, Math.min(1.25f, near[i] + t.light[i] - 1));
        }
        for (int y = 0; y < t.height; y++) {
            float belly = (float) (1 - .30 * Grain.ease(1.0, .45, t.yM(y)));
            for (int x = 0; x < t.width; x++) {
                t.light[y * t.width + x] *= belly;
            }
        }
        hollow(t, -.30, 1.265, .13, .075, -12, -.20); // flank hollow
        hollow(t, .225, 1.05, .085, .28, 8, -.15); // behind the shoulder
        hollow(t, -.375, .90, .050, .20, -24, -.22); // flank fold
        for (int rib = 0; rib < 4; rib++) {
            hollow(t, .10 - .105 * rib, 1.05 + .01 * rib, .018, .20, 14, -.06);
        }
        hollow(t, -.42, 1.385, .055, .035, 0, .17); // hook bone
        hollow(t, -.775, 1.305, .040, .045, 0, .15); // pin bone
        hollow(t, -.60, 1.27, .09, .07, -30, -.10); // between hook and pin
        hollow(t, -.56, 1.17, .06, .06, 0, .10); // hip joint
        hollow(t, -.60, .98, .10, .20, -10, .06); // thigh
        hollow(t, -.745, 1.05, .022, .17, 8, -.10); // between the thigh muscles
        hollow(t, .52, 1.24, .055, .20, 24, .08); // shoulder blade
        hollow(t, .40, 1.26, .03, .16, 22, -.08); // behind the blade's ridge
        hollow(t, .70, .99, .07, .06, 0, .10); // point of the shoulder
        hollow(t, .79, 1.13, .035, .22, -22, -.13); // where neck meets shoulder
        hollow(t, .93, 1.13, .03, .16, -40, -.09); // groove of the neck
        hollow(t, .52, .86, .10, .05, 20, -.12); // above the elbow
        hollow(t, -.05, .80, .35, .05, 5, .05); // curve of the barrel
        hollow(t, 1.02, 1.36, .14, .03, 14, .05); // crest
    }

    /** A soft hollow (negative) or bone (positive), leaning forward by degrees. */
    private static void hollow(Texture t, double cx, double cy, double rx, double ry, double leanDeg, double depth) {
        double c = Math.cos(Math.toRadians(leanDeg));
        double s = Math.sin(Math.toRadians(leanDeg));
        double reach = 2.6 * Math.max(rx, ry);
        int left = (int) Math.max(0, (cx - reach - t.leftM) * t.pxPerM);
        int right = (int) Math.min(t.width - 1, (cx + reach - t.leftM) * t.pxPerM);
        int top = (int) Math.max(0, (t.topM - cy - reach) * t.pxPerM);
        int bottom = (int) Math.min(t.height - 1, (t.topM - cy + reach) * t.pxPerM);
        for (int y = top; y <= bottom; y++) {
            for (int x = left; x <= right; x++) {
                double dx = t.xM(x) - cx;
                double dy = t.yM(y) - cy;
                double u = (c * dx - s * dy) / rx;
                double v = (s * dx + c * dy) / ry;
                t.light[y * t.width + x] *= (float) (1 + depth * Math.exp(-.5 * (u * u + v * v) * 1.6));
            }
        }
    }
}
