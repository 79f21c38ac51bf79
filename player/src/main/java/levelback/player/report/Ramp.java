package levelback.player.report;

import java.util.Locale;

/**
 * Colours of a printed report: the light set of the desk's roles. The score ramp has five stops of one hue and is
 * interpolated in OKLab (Ottosson 2020), so that its steps look even and it stays in order in grey.
 */
final class Ramp {
    static final String INK = "#17201D";
    static final String INK2 = "#414D48";
    static final String INK3 = "#56625C";
    static final String RULE = "#CBD3CF";
    static final String EDGE = "#717E78";
    static final String SCORE_EDGE = "#6B4A70";
    static final String INSET = "#F0F3F1";
    static final String GATE = "#0B5A49";

    private static final int[] STOPS = {0xF4EEF5, 0xD5BBD9, 0xB688BE, 0x92559B, 0x48134F};
    /** Four levels leave the middle stop out. */
    private static final int[] FOUR = {0xF4EEF5, 0xD5BBD9, 0x92559B, 0x48134F};

    private Ramp() {}

    /**
     * Colour of a level.
     *
     * @param fraction 0 at the sound end, 1 at the lame end
     * @param levels how many levels the scale has
     */
    static String score(double fraction, int levels) {
        int[] stops = levels == FOUR.length ? FOUR : STOPS;
        double at = Math.min(1, Math.max(0, fraction)) * (stops.length - 1);
        int below = Math.min(stops.length - 2, (int) at);
        return hex(mix(lab(stops[below]), lab(stops[below + 1]), at - below));
    }

    /** Black or white, whichever reads on the level's colour. */
    static String onScore(double fraction) {
        return fraction > 0.6 ? "#FFFFFF" : INK;
    }

    private static double[] mix(double[] a, double[] b, double t) {
        return new double[] {a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1]), a[2] + t * (b[2] - a[2])};
    }

    private static double linear(int channel) {
        double c = channel / 255.0;
        return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
    }

    private static int channel(double linear) {
        double c = linear <= 0.0031308 ? 12.92 * linear : 1.055 * Math.pow(linear, 1 / 2.4) - 0.055;
        return (int) Math.round(255 * Math.min(1, Math.max(0, c)));
    }

    private static double[] lab(int rgb) {
        double r = linear(rgb >> 16 & 0xFF);
        double g = linear(rgb >> 8 & 0xFF);
        double b = linear(rgb & 0xFF);
        double l = Math.cbrt(0.4122214708 * r + 0.5363325363 * g + 0.0514459929 * b);
        double m = Math.cbrt(0.2119034982 * r + 0.6806995451 * g + 0.1073969566 * b);
        double s = Math.cbrt(0.0883024619 * r + 0.2817188376 * g + 0.6299787005 * b);
        return new double[] {
            0.2104542553 * l + 0.7936177850 * m - 0.0040720468 * s,
            1.9779984951 * l - 2.4285922050 * m + 0.4505937099 * s,
            0.0259040371 * l + 0.7827717662 * m - 0.8086757660 * s
        };
    }

    private static String hex(double[] lab) {
        double l = cube(lab[0] + 0.3963377774 * lab[1] + 0.2158037573 * lab[2]);
        double m = cube(lab[0] - 0.1055613458 * lab[1] - 0.0638541728 * lab[2]);
        double s = cube(lab[0] - 0.0894841775 * lab[1] - 1.2914855480 * lab[2]);
        return String.format(
                Locale.ROOT,
                "#%02X%02X%02X",
                channel(4.0767416621 * l - 3.3077115913 * m + 0.2309699292 * s),
                channel(-1.2684380046 * l + 2.6097574011 * m - 0.3413193965 * s),
                channel(-0.0041960863 * l - 0.7034186147 * m + 1.7076147010 * s));
    }

    private static double cube(double x) {
        return x * x * x;
    }
}
