package levelback.player.report;

import java.util.List;
import java.util.Locale;
import levelback.player.report.ReportFigures.Point;

/** Lame share visit by visit with its intervals, as SVG text; readable in grey. */
final class TrendChart {
    private static final double WIDTH = 520;
    private static final double HEIGHT = 262;
    private static final double LEFT = 40;
    private static final double RIGHT = 506;
    private static final double TOP = 14;
    private static final double FLOOR = 214;
    /** 8 pt at the size the chart is printed. */
    private static final double SMALL = 12.5;

    private final ReportWords words;

    TrendChart(ReportWords words) {
        this.words = words;
    }

    /** Whether the band of published British herds belongs in the chart: they were scored on the 0 to 3 scale. */
    static boolean hasBand(levelback.scoring.scale.GaitScale scale) {
        return scale.id().equals("mobility-0-3");
    }

    /**
     * @param pooled whether the band of published British herds belongs here (it was scored on the 0 to 3 scale)
     */
    String draw(List<Point> points, boolean pooled) {
        double highest = points.stream()
                .mapToDouble(p -> p.share()
                        .interval()
                        .map(i -> i.high())
                        .orElse(p.share().value().orElse(0)))
                .max()
                .orElse(0.2);
        double top = Math.max(pooled ? 0.4 : 0.2, Math.ceil(highest * 10 + 1e-9) / 10);
        StringBuilder text = new StringBuilder(Marks.svg(118, 118 * HEIGHT / WIDTH, "0 0 520 262"));
        if (pooled) {
            // Afonso et al. 2020: pooled prevalence of British herds 29.5 % (26.7 to 32.4).
            double y1 = y(0.324, top);
            text.append("<rect x=\"%s\" y=\"%s\" width=\"%s\" height=\"%s\" fill=\"#E9EDEB\"/>"
                    .formatted(Marks.n(LEFT), Marks.n(y1), Marks.n(RIGHT - LEFT), Marks.n(y(0.267, top) - y1)));
        }
        for (int percent = 0; percent <= Math.round(top * 100); percent += top > 0.61 ? 20 : 10) {
            double y = y(percent / 100.0, top);
            text.append("<path d=\"M%s %s H%s\" stroke=\"%s\" stroke-width=\"%s\"/>"
                    .formatted(
                            Marks.n(LEFT),
                            Marks.n(y),
                            Marks.n(RIGHT),
                            percent == 0 ? Ramp.EDGE : Ramp.RULE,
                            percent == 0 ? "1.2" : "0.8"));
            label(text, LEFT - 8, y + 4.5, "end", Integer.toString(percent), Ramp.INK2, false);
        }
        StringBuilder lame = new StringBuilder();
        StringBuilder severe = new StringBuilder();
        StringBuilder marks = new StringBuilder();
        String lameColour = Ramp.score(0.68, 4);
        String severeColour = Ramp.score(1, 4);
        int every = Math.max(1, (int) Math.ceil(points.size() / 9.0));
        for (int i = 0; i < points.size(); i++) {
            Point p = points.get(i);
            double x = x(i, points.size());
            double share = p.share().value().orElse(0);
            double y = y(share, top);
            lame.append(i == 0 ? "M" : " L").append(Marks.n(x)).append(' ').append(Marks.n(y));
            double ySevere = y(p.scored() == 0 ? 0 : (double) p.severe() / p.scored(), top);
            severe.append(i == 0 ? "M" : " L").append(Marks.n(x)).append(' ').append(Marks.n(ySevere));
            p.share()
                    .interval()
                    .ifPresent(interval -> marks.append("<path d=\"M%s %s V%s\" stroke=\"%s\" stroke-width=\"2.4\"/>"
                            .formatted(
                                    Marks.n(x),
                                    Marks.n(y(interval.low(), top)),
                                    Marks.n(y(interval.high(), top)),
                                    lameColour)));
            marks.append("<circle cx=\"%s\" cy=\"%s\" r=\"5\" fill=\"%s\" stroke=\"%s\" stroke-width=\"1\"/>"
                    .formatted(Marks.n(x), Marks.n(y), lameColour, Ramp.SCORE_EDGE));
            marks.append("<rect x=\"%s\" y=\"%s\" width=\"7\" height=\"7\" fill=\"%s\"/>"
                    .formatted(Marks.n(x - 3.5), Marks.n(ySevere - 3.5), severeColour));
            if (i == 0 || i == points.size() - 1 || i == points.size() / 2) {
                boolean last = i == points.size() - 1 && i > 0;
                label(marks, last ? x - 8 : x + 8, y - 8, last ? "end" : "start", percent(share), Ramp.INK, true);
            }
            if (i % every == 0 || i == points.size() - 1) {
                label(text, x, FLOOR + 19, "middle", words.shortDay(p.date()), Ramp.INK, false);
                label(text, x, FLOOR + 36, "middle", "n " + p.scored(), Ramp.INK2, false);
            }
        }
        text.append("<path d=\"%s\" fill=\"none\" stroke=\"%s\" stroke-width=\"1.6\"/>".formatted(lame, lameColour));
        text.append("<path d=\"%s\" fill=\"none\" stroke=\"%s\" stroke-width=\"1.6\" stroke-dasharray=\"5 3\"/>"
                .formatted(severe, severeColour));
        return text.append(marks).append("</svg>").toString();
    }

    static String percent(double share) {
        return String.format(Locale.ROOT, "%.1f", 100 * share);
    }

    private static double x(int i, int count) {
        return count == 1 ? (LEFT + RIGHT) / 2 : LEFT + 22 + i * (RIGHT - LEFT - 44) / (count - 1);
    }

    private static double y(double share, double top) {
        return FLOOR - (FLOOR - TOP) * share / top;
    }

    private static void label(
            StringBuilder text, double x, double y, String anchor, String label, String colour, boolean strong) {
        text.append("<text x=\"%s\" y=\"%s\" text-anchor=\"%s\" font-family=\"Levelback Sans\" font-weight=\"%s\""
                        .formatted(Marks.n(x), Marks.n(y), anchor, strong ? "700" : "400"))
                .append(" font-size=\"%s\" fill=\"%s\">".formatted(strong ? "13.5" : Marks.n(SMALL), colour))
                .append(ReportWords.xml(label))
                .append("</text>");
    }
}
