package levelback.scoring.gait;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * Ranges to warn outside of, never to alter by: lowest and highest published group mean (Flower and others 2005, 2006,
 * 2007), less and plus three standard deviations between cows (SEM·√n of the 2005 groups; tracking: 2007). Swing and
 * duty factor: common practice, no source.
 */
final class Plausible {

    private Plausible() {}

    static List<String> warnings(GaitResult.Means means, GaitFigure left, GaitFigure right) {
        List<String> warnings = new ArrayList<>();
        look(warnings, "stride time", means.strideTimeS(), 0.86, 1.89, "s");
        look(warnings, "stride length", means.strideLengthM(), 0.97, 1.83, "m");
        look(warnings, "speed", means.speedMPerS(), 0.45, 1.60, "m/s");
        look(warnings, "swing time", means.swingTimeS(), 0.25, 0.80, "s");
        look(warnings, "duty factor", means.dutyFactor(), 0.50, 0.85, "");
        look(warnings, "tracking-up on the left", left, -0.37, 0.33, "m");
        look(warnings, "tracking-up on the right", right, -0.37, 0.33, "m");
        return warnings;
    }

    private static void look(List<String> to, String what, GaitFigure figure, double low, double high, String unit) {
        OptionalDouble value = figure.estimate().value();
        if (value.isPresent() && (value.getAsDouble() < low || value.getAsDouble() > high)) {
            to.add(String.format(
                            Locale.ROOT,
                            "%s %.3g %s lies outside %s to %s %s, where walking cows are found; look at the footfalls"
                                    + " and the scale",
                            what,
                            value.getAsDouble(),
                            unit,
                            low,
                            high,
                            unit)
                    .replace("  ", " "));
        }
    }
}
