package levelback.player.report;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import levelback.scoring.scale.GaitScale;
import levelback.scoring.value.Leg;

/** The small drawn signs of a report as SVG text: score tile, leg chip, level line. */
final class Marks {
    private static final String FONT = "font-family=\"Levelback Sans\"";

    private Marks() {}

    static String number(double value) {
        return value == Math.rint(value)
                ? Long.toString((long) value)
                : String.format(Locale.ROOT, "%.3f", value).replaceAll("0+$", "");
    }

    static double fraction(GaitScale scale, double level) {
        return (level - scale.lowest()) / (scale.highest() - scale.lowest());
    }

    static String colour(GaitScale scale, double level) {
        return Ramp.score(fraction(scale, level), scale.levels().size());
    }

    /** A score: level top at the sound end, arched at the lame end, always with its digit. */
    static String tile(GaitScale scale, double level, double widthMm) {
        double f = fraction(scale, level);
        double dome = 7.8 * f;
        String top = String.format(Locale.ROOT, "%.2f", 8.6 - 1.3333 * dome);
        String digit = number(level);
        return svg(widthMm, widthMm * 23.6 / 20.6, "-0.3 0 20.6 23.6")
                + "<path d=\"M0.5 23 L0.5 8.6 C1.5 " + top + " 18.5 " + top + " 19.5 8.6 L19.5 23 Z\" fill=\""
                + colour(scale, level) + "\" stroke=\"" + Ramp.SCORE_EDGE + "\" stroke-width=\"1\"/>"
                + "<text x=\"10\" y=\"20\" text-anchor=\"middle\" " + FONT + " font-weight=\"700\" font-size=\""
                + (digit.length() > 1 ? 10 : 14) + "\" fill=\"" + Ramp.onScore(f) + "\">" + digit + "</text></svg>";
    }

    /** A leg: the square corner is where her foot is, seen from above. */
    static String leg(Leg leg, double widthMm) {
        String fill = switch (leg) {
            case LF -> "#56B4E9";
            case RF -> "#E69F00";
            case LH -> "#0072B2";
            case RH -> "#D55E00";
        };
        String ink = leg == Leg.LH ? "#FFFFFF" : "#000000";
        int[] r = {
            leg == Leg.LF ? 0 : 6, leg == Leg.RF ? 0 : 6, leg == Leg.RH ? 0 : 6, leg == Leg.LH ? 0 : 6,
        };
        String path = "M" + (0.5 + r[0]) + " 0.5 H" + (27.5 - r[1]) + corner(r[1], 27.5, 0.5 + r[1]) + " V"
                + (18.5 - r[2]) + corner(r[2], 27.5 - r[2], 18.5) + " H" + (0.5 + r[3])
                + corner(r[3], 0.5, 18.5 - r[3]) + " V" + (0.5 + r[0]) + corner(r[0], 0.5 + r[0], 0.5) + " Z";
        return svg(widthMm, widthMm * 19 / 28, "0 0 28 19") + "<path d=\"" + path + "\" fill=\"" + fill
                + "\" stroke=\"" + Ramp.INK
                + "\" stroke-width=\"0.8\"/><text x=\"14\" y=\"13.8\" text-anchor=\"middle\" "
                + FONT + " font-weight=\"600\" font-size=\"12\" fill=\"" + ink + "\">" + leg + "</text></svg>";
    }

    private static String corner(int radius, double x, double y) {
        return radius == 0 ? "" : " A" + radius + " " + radius + " 0 0 1 " + x + " " + y;
    }

    /** Her last scores as dots on hairlines, joined; a gap where she was not seen. */
    static String levelLine(GaitScale scale, List<OptionalDouble> scores) {
        StringBuilder text = new StringBuilder(svg(20, 6.2, "0 0 84 26"));
        int lines = (int) Math.min(5, scale.highest() - scale.lowest() + 1);
        for (int i = 0; i < lines; i++) {
            double y = 23 - 20.0 * i / (lines - 1);
            text.append("<path d=\"M0 %s H84\" stroke=\"%s\" stroke-width=\"0.8\"/>".formatted(n(y), Ramp.RULE));
        }
        double step = 76.0 / Math.max(4, scores.size() - 1);
        StringBuilder dots = new StringBuilder();
        String join = "";
        for (int i = 0; i < scores.size(); i++) {
            if (scores.get(i).isEmpty()) {
                join = "";
                continue;
            }
            double level = scores.get(i).getAsDouble();
            double x = 4 + i * step;
            double y = 23 - 20 * fraction(scale, level);
            if (!join.isEmpty()) {
                text.append("<path d=\"%s L%s %s\" stroke=\"%s\" stroke-width=\"1.2\" fill=\"none\"/>"
                        .formatted(join, n(x), n(y), Ramp.INK2));
            }
            join = "M" + n(x) + " " + n(y);
            dots.append("<circle cx=\"%s\" cy=\"%s\" r=\"2.9\" fill=\"%s\" stroke=\"%s\" stroke-width=\"0.9\"/>"
                    .formatted(n(x), n(y), colour(scale, level), Ramp.SCORE_EDGE));
        }
        return text.append(dots).append("</svg>").toString();
    }

    /** Our sign: a level back on four legs. */
    static String levelBack() {
        return svg(20, 9.5, "0 0 80 38") + "<g stroke=\"" + Ramp.INK
                + "\" stroke-width=\"4.4\" fill=\"none\"><path d=\"M0 4 H80\"/><path stroke-width=\"3.6\""
                + " d=\"M8 4 V36 M24 4 V36 M56 4 V36 M72 4 V36\"/></g></svg>";
    }

    static String svg(double widthMm, double heightMm, String viewBox) {
        return "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%smm\" height=\"%smm\" viewBox=\"%s\">"
                .formatted(n(widthMm), n(heightMm), viewBox);
    }

    static String n(double value) {
        return String.format(Locale.ROOT, "%.2f", value);
    }
}
