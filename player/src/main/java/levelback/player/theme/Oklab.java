package levelback.player.theme;

import javafx.scene.paint.Color;

/**
 * Mixing of colours in OKLab, so that equal steps look equal, and contrast as WCAG 2 defines it.
 *
 * <p>References: B. Ottosson (2020), A perceptual color space for image processing (matrices as published there). W3C, Web
 * Content Accessibility Guidelines 2.2, relative luminance and contrast ratio.
 */
final class Oklab {

    private Oklab() {}

    /** The colour a fraction {@code t} of the way from one to the other, t in [0, 1]. */
    static Color mix(Color from, Color to, double t) {
        double[] a = toLab(from);
        double[] b = toLab(to);
        return fromLab(a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1]), a[2] + t * (b[2] - a[2]));
    }

    /** Lightness, green-red and blue-yellow of a colour. */
    static double[] toLab(Color colour) {
        double r = linear(colour.getRed());
        double g = linear(colour.getGreen());
        double b = linear(colour.getBlue());
        double l = Math.cbrt(0.4122214708 * r + 0.5363325363 * g + 0.0514459929 * b);
        double m = Math.cbrt(0.2119034982 * r + 0.6806995451 * g + 0.1073969566 * b);
        double s = Math.cbrt(0.0883024619 * r + 0.2817188376 * g + 0.6299787005 * b);
        return new double[] {
            0.2104542553 * l + 0.7936177850 * m - 0.0040720468 * s,
            1.9779984951 * l - 2.4285922050 * m + 0.4505937099 * s,
            0.0259040371 * l + 0.7827717662 * m - 0.8086757660 * s
        };
    }

    private static Color fromLab(double lightness, double a, double b) {
        double l = cube(lightness + 0.3963377774 * a + 0.2158037573 * b);
        double m = cube(lightness - 0.1055613458 * a - 0.0638541728 * b);
        double s = cube(lightness - 0.0894841775 * a - 1.2914855480 * b);
        return Color.color(
                encoded(4.0767416621 * l - 3.3077115913 * m + 0.2309699292 * s),
                encoded(-1.2684380046 * l + 2.6097574011 * m - 0.3413193965 * s),
                encoded(-0.0041960863 * l - 0.7034186147 * m + 1.7076147010 * s));
    }

    /** Contrast ratio of two opaque colours, 1 to 21. */
    static double contrast(Color one, Color other) {
        double a = luminance(one);
        double b = luminance(other);
        return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    }

    private static double luminance(Color colour) {
        return 0.2126 * linear(colour.getRed())
                + 0.7152 * linear(colour.getGreen())
                + 0.0722 * linear(colour.getBlue());
    }

    private static double cube(double x) {
        return x * x * x;
    }

    private static double linear(double encoded) {
        return encoded <= 0.04045 ? encoded / 12.92 : Math.pow((encoded + 0.055) / 1.055, 2.4);
    }

    private static double encoded(double linear) {
        double bounded = Math.max(0, Math.min(1, linear));
        double value = bounded <= 0.0031308 ? 12.92 * bounded : 1.055 * Math.pow(bounded, 1 / 2.4) - 0.055;
        return Math.max(0, Math.min(1, value));
    }
}
