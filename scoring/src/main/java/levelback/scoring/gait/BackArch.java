package levelback.scoring.gait;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import levelback.scoring.value.Estimate;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * The arch of her back.
 *
 * @param curvaturePerM 1/R of the circle through withers, back and tailhead (loin where back is missing), positive when
 *     the middle point lies above the chord; mean over the times that have the three
 * @param curveCurvaturePerM the same by a smoothing curve, a least-squares parabola through all marks from withers to
 *     tailhead (four or more) over the chord of the two, at its middle; the poll is left out, since it moves with the
 *     head
 */
public record BackArch(Estimate curvaturePerM, Estimate curveCurvaturePerM) {

    private static final List<String> OF_THE_BACK = List.of("withers", "back", "loin", "hook", "tailhead");

    static BackArch of(List<BodyMark> marks, double level) {
        Map<Double, Map<String, BodyMark>> byTime = new TreeMap<>();
        for (BodyMark mark : marks) {
            byTime.computeIfAbsent(mark.timeS(), t -> new TreeMap<>()).put(mark.point(), mark);
        }
        java.util.ArrayList<Double> circles = new java.util.ArrayList<>();
        java.util.ArrayList<Double> curves = new java.util.ArrayList<>();
        for (Map<String, BodyMark> at : byTime.values()) {
            BodyMark withers = at.get("withers");
            BodyMark middle = at.containsKey("back") ? at.get("back") : at.get("loin");
            BodyMark tailhead = at.get("tailhead");
            if (withers != null && middle != null && tailhead != null) {
                circle(withers, middle, tailhead).ifPresent(circles::add);
            }
            if (withers != null && tailhead != null) {
                List<BodyMark> back = at.values().stream()
                        .filter(m -> OF_THE_BACK.contains(m.point()))
                        .toList();
                curve(withers, tailhead, back).ifPresent(curves::add);
            }
        }
        return new BackArch(
                series(
                        circles,
                        "1/R of the circle through withers, back (loin where it is missing) and tailhead, mean over times",
                        "no time has withers, back or loin, and tailhead apart from each other",
                        level),
                series(
                        curves,
                        "curvature in the middle of a least-squares parabola through withers, back, loin, hook and"
                                + " tailhead (four or more of them), mean over times",
                        "no time has four marks from withers to tailhead",
                        level));
    }

    /**
     * 1/R = 4K/(abc) of the circle through three points, K the area and a, b, c the sides of their triangle; positive
     * where the middle one lies above the chord of the others, 0 on a line; empty where two fall together.
     */
    public static OptionalDouble circle(BodyMark first, BodyMark middle, BodyMark last) {
        double a = Math.hypot(last.xM() - middle.xM(), last.yM() - middle.yM());
        double b = Math.hypot(last.xM() - first.xM(), last.yM() - first.yM());
        double c = Math.hypot(middle.xM() - first.xM(), middle.yM() - first.yM());
        if (a * b * c == 0) {
            return OptionalDouble.empty();
        }
        double cross = (middle.xM() - first.xM()) * (last.yM() - first.yM())
                - (middle.yM() - first.yM()) * (last.xM() - first.xM());
        // Positive cross: the middle one is on the right of first to last, which is below it where x grows that way.
        double above = last.xM() >= first.xM() ? -cross : cross;
        return OptionalDouble.of(2 * above / (a * b * c) + 0.0);
    }

    private static OptionalDouble curve(BodyMark withers, BodyMark tailhead, List<BodyMark> back) {
        double chord = Math.hypot(withers.xM() - tailhead.xM(), withers.yM() - tailhead.yM());
        if (back.size() < 4 || chord == 0) {
            return OptionalDouble.empty();
        }
        double ux = (withers.xM() - tailhead.xM()) / chord;
        double uy = (withers.yM() - tailhead.yM()) / chord;
        double up = ux >= 0 ? 1 : -1;
        double[][] design = new double[back.size()][];
        double[] heights = new double[back.size()];
        for (int i = 0; i < back.size(); i++) {
            double dx = back.get(i).xM() - tailhead.xM();
            double dy = back.get(i).yM() - tailhead.yM();
            double along = (dx * ux + dy * uy) / chord - 0.5;
            design[i] = new double[] {1, along, along * along};
            heights[i] = up * (dy * ux - dx * uy);
        }
        return LeastSquares.fit(design, heights)
                .map(fit -> {
                    double slope = fit.coefficient(1) / chord;
                    double bend = 2 * fit.coefficient(2) / (chord * chord);
                    return OptionalDouble.of(-bend / Math.pow(1 + slope * slope, 1.5) + 0.0);
                })
                .orElse(OptionalDouble.empty());
    }

    /** Neighbouring frames are alike: n counts as n(1−r)/(1+r), r their lag-one correlation, where that is positive. */
    private static Estimate series(List<Double> values, String method, String whyNone, double level) {
        int n = values.size();
        if (n == 0) {
            return Estimate.missing(0, method, whyNone);
        }
        double mean = values.stream().mapToDouble(v -> v).sum() / n;
        if (n == 1) {
            return Estimate.pointOnly(mean, 1, method, "one time does not show how it varies");
        }
        double squares = 0;
        double neighbours = 0;
        for (int i = 0; i < n; i++) {
            double off = values.get(i) - mean;
            squares += off * off;
            if (i > 0) {
                neighbours += off * (values.get(i - 1) - mean);
            }
        }
        double r = squares == 0 ? 0 : Math.max(0, Math.min(0.999, neighbours / squares));
        double effective = Math.max(2, n * (1 - r) / (1 + r));
        double u = Math.sqrt(squares / (n - 1) / effective);
        double half = u * TDistribution.of(effective - 1).inverseCumulativeProbability(1 - (1 - level) / 2);
        return Estimate.of(
                mean,
                mean - half,
                mean + half,
                n,
                method + "; t interval on n(1-r)/(1+r) times, r the correlation of neighbouring ones; the digitising"
                        + " error is in their spread");
    }
}
