package levelback.player.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import levelback.scoring.gait.FootPhase;
import levelback.scoring.gait.GaitFigure;
import levelback.scoring.gait.GaitResult;
import levelback.scoring.gait.Stride;
import levelback.scoring.gait.Symmetry;
import levelback.scoring.value.Estimate;
import levelback.scoring.value.Leg;

/** The document of {@code gait --json}. */
final class GaitJson {

    private GaitJson() {}

    static void write(PrintWriter to, GaitResult result) {
        JsonOut.object(to, out -> {
            out.list("strides", result.strides(), GaitJson::stride);
            means(out, result.all());
            figure(out, "cadencePerMin", result.cadencePerMin());
            out.object("byLeg", o -> {
                for (Leg leg : Leg.values()) {
                    GaitResult.Means of = result.byLeg().get(leg);
                    if (of != null) {
                        o.object(leg.name(), l -> means(l, of));
                    }
                }
            });
            steps(out, "stepTimeS", result.stepTimeS());
            steps(out, "stepLengthM", result.stepLengthM());
            out.whole("broken", result.broken());
            index(out, "strideLengthSymmetryIndex", result.strideLengthSymmetry());
            index(out, "stanceTimeSymmetryIndex", result.stanceTimeSymmetry());
            out.object("trackingUpM", o -> {
                figure(o, "left", result.trackingUpLeftM());
                figure(o, "right", result.trackingUpRightM());
            });
            support(out, result);
            phases(out, result.phases());
            body(out, result);
            out.flag("turnedRound", result.turnedRound());
            out.list("warnings", result.warnings(), (o, warning) -> o.text("what", warning));
        });
    }

    private static void stride(JsonOut out, Stride stride) throws IOException {
        out.text("leg", stride.leg().name());
        out.number("downS", stride.downS());
        out.number("strideTimeS", stride.strideTimeS());
        out.number("stanceTimeS", stride.stanceTimeS());
        out.number("swingTimeS", stride.swingTimeS());
        out.number("dutyFactor", stride.dutyFactor());
        out.number("strideLengthM", stride.strideLengthM());
        out.number("speedMPerS", stride.speedMPerS());
        boolean noUp = stride.stanceTimeS().isEmpty();
        boolean noPrint = stride.strideLengthM().isEmpty();
        if (noUp || noPrint) {
            out.text(
                    "why",
                    noUp && noPrint
                            ? "no lift-off between the two downs, and a print without x_m"
                            : noUp ? "no lift-off between the two downs" : "a print without x_m");
        }
        Stride.Uncertainty u = stride.uncertainty();
        if (u.strideTimeS() > 0 || u.strideLengthM() > 0) {
            out.object("standardUncertainty", o -> {
                o.number("strideTimeS", u.strideTimeS());
                o.number("stanceTimeS", noUp ? OptionalDouble.empty() : OptionalDouble.of(u.stanceTimeS()));
                o.number("dutyFactor", noUp ? OptionalDouble.empty() : OptionalDouble.of(u.dutyFactor()));
                o.number("strideLengthM", noPrint ? OptionalDouble.empty() : OptionalDouble.of(u.strideLengthM()));
                o.number("speedMPerS", noPrint ? OptionalDouble.empty() : OptionalDouble.of(u.speedMPerS()));
            });
        }
    }

    private static void means(JsonOut out, GaitResult.Means means) throws IOException {
        figure(out, "strideTimeS", means.strideTimeS());
        figure(out, "stanceTimeS", means.stanceTimeS());
        figure(out, "swingTimeS", means.swingTimeS());
        figure(out, "dutyFactor", means.dutyFactor());
        figure(out, "strideLengthM", means.strideLengthM());
        figure(out, "speedMPerS", means.speedMPerS());
    }

    /** An estimate with the parts of its standard uncertainty beside it. */
    private static void figure(JsonOut out, String key, GaitFigure figure) throws IOException {
        Estimate e = figure.estimate();
        out.object(key, o -> {
            o.estimateKeys(e);
            if (e.value().isPresent() && e.interval().isPresent()) {
                o.object("standardUncertainty", u -> {
                    u.number("combined", figure.combined());
                    u.number(
                            "spread",
                            Double.isNaN(figure.spread())
                                    ? OptionalDouble.empty()
                                    : OptionalDouble.of(figure.spread()));
                    u.number("framePeriod", figure.timing());
                    u.number("digitising", figure.digitising());
                    u.number("calibration", figure.calibration());
                });
            }
        });
    }

    private static void steps(JsonOut out, String key, GaitResult.Pair pair) throws IOException {
        out.object(key, o -> {
            steps(o, "fore", pair.fore());
            steps(o, "hind", pair.hind());
        });
    }

    private static void steps(JsonOut out, String key, Symmetry s) throws IOException {
        out.object(key, o -> {
            o.number("left", s.left());
            o.number("right", s.right());
            o.number("symmetryIndex", s.index());
            o.interval("symmetryIndexInterval", s.interval());
            o.whole("nLeft", s.nLeft());
            o.whole("nRight", s.nRight());
            o.text("method", s.method());
            if (s.why().isPresent()) {
                o.text("why", s.why().get());
            }
        });
    }

    private static void index(JsonOut out, String key, GaitResult.Pair pair) throws IOException {
        out.object(key, o -> {
            o.number("fore", pair.fore().index());
            o.number("hind", pair.hind().index());
            o.object("symmetryIndexInterval", i -> {
                i.interval("fore", pair.fore().interval());
                i.interval("hind", pair.hind().interval());
            });
            o.text("method", pair.fore().method() + "; the hind legs likewise");
            String why = Stream.of(pair.fore().why(), pair.hind().why())
                    .flatMap(Optional::stream)
                    .distinct()
                    .collect(Collectors.joining("; "));
            if (!why.isEmpty()) {
                o.text("why", why);
            }
        });
    }

    private static void support(JsonOut out, GaitResult result) throws IOException {
        List<Double> fractions = result.support().fractions();
        if (fractions.isEmpty()) {
            out.nothing("supportFraction");
            out.text("why", "supportFraction: " + result.support().why().orElse(""));
            return;
        }
        out.object("supportFraction", o -> {
            for (int feet = 0; feet < fractions.size(); feet++) {
                o.number(String.valueOf(feet), fractions.get(feet));
            }
        });
    }

    private static void phases(JsonOut out, List<FootPhase> phases) throws IOException {
        out.object("phase", o -> {
            for (FootPhase phase : phases) {
                o.number(phase.leg().name(), phase.phase());
            }
            String why = phases.stream()
                    .map(FootPhase::why)
                    .flatMap(Optional::stream)
                    .collect(Collectors.joining("; "));
            if (!why.isEmpty()) {
                o.text("why", why);
            }
        });
    }

    private static void body(JsonOut out, GaitResult result) throws IOException {
        String none = "no --marks were given";
        out.object("backArch", o -> {
            o.estimate(
                    "curvaturePerM",
                    result.backArch()
                            .map(b -> b.curvaturePerM())
                            .orElseGet(() -> Estimate.missing(0, "circle through three marks", none)));
            o.estimate(
                    "curveCurvaturePerM",
                    result.backArch()
                            .map(b -> b.curveCurvaturePerM())
                            .orElseGet(() -> Estimate.missing(0, "smoothing curve through the marks", none)));
        });
        out.object(
                "headBob",
                o -> o.estimate(
                        "peakToPeakM",
                        result.headBob()
                                .map(b -> b.peakToPeakM())
                                .orElseGet(() -> Estimate.missing(0, "line and two harmonics", none))));
    }
}
