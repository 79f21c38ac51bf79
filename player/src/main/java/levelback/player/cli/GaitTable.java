package levelback.player.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import levelback.scoring.gait.FootPhase;
import levelback.scoring.gait.GaitFigure;
import levelback.scoring.gait.GaitResult;
import levelback.scoring.gait.Symmetry;
import levelback.scoring.value.Estimate;
import levelback.scoring.value.Leg;

/** What {@code gait} prints for a person. */
final class GaitTable {

    private GaitTable() {}

    static void write(PrintWriter to, GaitResult result) {
        line(
                to,
                "%d strides%s%s.",
                result.strides().size(),
                result.broken() == 0 ? "" : ", " + result.broken() + " broken by a missing footfall",
                result.turnedRound() ? "; x falls as she walks, lengths turned round" : "");
        to.println();
        GaitResult.Means all = result.all();
        figure(to, "stride time", all.strideTimeS(), "s");
        figure(to, "stance time", all.stanceTimeS(), "s");
        figure(to, "swing time", all.swingTimeS(), "s");
        figure(to, "duty factor", all.dutyFactor(), "");
        figure(to, "stride length", all.strideLengthM(), "m");
        figure(to, "speed", all.speedMPerS(), "m/s");
        figure(to, "cadence", result.cadencePerMin(), "strides/min");
        figure(to, "tracking-up L", result.trackingUpLeftM(), "m");
        figure(to, "tracking-up R", result.trackingUpRightM(), "m");
        result.backArch().ifPresent(b -> estimate(to, "back arch", b.curvaturePerM(), "1/m"));
        result.headBob().ifPresent(b -> estimate(to, "head bob", b.peakToPeakM(), "m"));
        to.println();
        line(to, "%-4s %8s %9s %9s %9s %9s %9s", "leg", "strides", "time s", "stance s", "duty", "length m", "m/s");
        for (Leg leg : Leg.values()) {
            GaitResult.Means of = result.byLeg().get(leg);
            if (of != null) {
                line(
                        to,
                        "%-4s %8d %9s %9s %9s %9s %9s",
                        leg,
                        of.strideTimeS().estimate().n(),
                        number(of.strideTimeS().estimate().value()),
                        number(of.stanceTimeS().estimate().value()),
                        number(of.dutyFactor().estimate().value()),
                        number(of.strideLengthM().estimate().value()),
                        number(of.speedMPerS().estimate().value()));
            }
        }
        to.println();
        line(to, "%-20s %8s %8s %8s  %s", "", "left", "right", "index", "95 % or the level asked");
        symmetry(to, "step time fore, s", result.stepTimeS().fore());
        symmetry(to, "step time hind, s", result.stepTimeS().hind());
        symmetry(to, "step length fore, m", result.stepLengthM().fore());
        symmetry(to, "step length hind, m", result.stepLengthM().hind());
        symmetry(to, "stance fore, s", result.stanceTimeSymmetry().fore());
        symmetry(to, "stance hind, s", result.stanceTimeSymmetry().hind());
        symmetry(to, "stride fore, m", result.strideLengthSymmetry().fore());
        symmetry(to, "stride hind, m", result.strideLengthSymmetry().hind());
        to.println();
        support(to, result);
        StringBuilder phases = new StringBuilder("Phase in the LH stride:");
        for (FootPhase phase : result.phases()) {
            phases.append("  ").append(phase.leg()).append(' ').append(number(phase.phase()));
        }
        to.println(phases);
        to.println("Strides: " + all.strideTimeS().estimate().method() + ".");
        for (String warning : result.warnings()) {
            to.println("Look again: " + warning + ".");
        }
    }

    private static void support(PrintWriter to, GaitResult result) {
        List<Double> fractions = result.support().fractions();
        if (fractions.isEmpty()) {
            to.println("Feet on the floor: - (" + result.support().why().orElse("") + ")");
            return;
        }
        StringBuilder words = new StringBuilder("Feet on the floor, share of time:");
        for (int feet = 0; feet < fractions.size(); feet++) {
            words.append(String.format(Locale.ROOT, "  %d: %.3f", feet, fractions.get(feet)));
        }
        to.println(words);
    }

    private static void figure(PrintWriter to, String name, GaitFigure figure, String unit) {
        estimate(to, name, figure.estimate(), unit);
    }

    private static void estimate(PrintWriter to, String name, Estimate e, String unit) {
        if (e.value().isEmpty()) {
            line(to, "%-14s - (%s)", name, e.why().orElse(""));
            return;
        }
        String interval = e.interval()
                .map(i -> String.format(Locale.ROOT, " (%.3f to %.3f)", i.low(), i.high()))
                .orElse(" (no interval)");
        line(to, "%-14s %s%s %s, n %d", name, number(e.value()), interval, unit, e.n());
    }

    private static void symmetry(PrintWriter to, String name, Symmetry s) {
        String index = s.index().isPresent()
                ? String.format(Locale.ROOT, "%.1f", s.index().getAsDouble())
                : "-";
        String rest = s.interval()
                .map(i -> String.format(Locale.ROOT, "%.1f to %.1f", i.low(), i.high()))
                .orElse("(" + s.why().orElse("") + ")");
        line(to, "%-20s %8s %8s %8s  %s", name, number(s.left()), number(s.right()), index, rest);
    }

    private static String number(OptionalDouble value) {
        return value.isPresent() ? String.format(Locale.ROOT, "%.3f", value.getAsDouble()) : "-";
    }

    private static void line(PrintWriter to, String format, Object... args) {
        to.println(String.format(Locale.ROOT, format, args).stripTrailing());
    }
}
