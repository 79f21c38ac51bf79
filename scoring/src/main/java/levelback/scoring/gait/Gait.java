package levelback.scoring.gait;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import levelback.scoring.value.Estimate;
import levelback.scoring.value.Leg;

/** The gait measures of one pass, from her footfalls and, where there are any, from marks on her body. */
public final class Gait {

    private final Walk walk;
    private final StrideSpan.Found found;
    private final GaitQuestion question;
    private final MeanFigure means;
    private final Rounds rounds;

    private Gait(List<Footfall> footfalls, GaitQuestion question) {
        this.walk = new Walk(footfalls);
        this.found = StrideSpan.find(walk);
        this.question = question;
        this.means = new MeanFigure(walk, question);
        this.rounds = new Rounds(walk);
    }

    /**
     * Measures a pass.
     *
     * @param footfalls in any order; no two events of a leg at one time
     * @param marks in any order; empty where her body was not marked
     * @return every measure; one that the footfalls cannot carry says what is missing
     */
    public static GaitResult of(List<Footfall> footfalls, List<BodyMark> marks, GaitQuestion question) {
        return new Gait(footfalls, question).measured(marks);
    }

    private GaitResult measured(List<BodyMark> marks) {
        List<StrideSpan> spans = found.all();
        Map<Leg, GaitResult.Means> byLeg = new EnumMap<>(Leg.class);
        for (Leg leg : Leg.values()) {
            String none = "no stride of " + leg;
            byLeg.put(leg, meansOf(found.of(leg), readings -> means.ofOneLeg(readings, "strides", none), leg + ""));
        }
        String who = "any leg";
        GaitResult.Means all =
                meansOf(spans, readings -> means.ofAllLegs(readings, rounds, "strides", "no stride of " + who), who);
        double strideTime = all.strideTimeS().estimate().value().orElse(Double.NaN);
        StepReadings steps = new StepReadings(walk, found);
        GaitFigure left = trackingUp(steps, Leg.LH, strideTime);
        GaitFigure right = trackingUp(steps, Leg.RH, strideTime);
        SupportSequence support = SupportSequence.of(walk);
        List<String> warnings = new ArrayList<>(Plausible.warnings(all, left, right));
        warnings.addAll(support.notes());
        List<StrideSpan> lh = found.of(Leg.LH);
        return new GaitResult(
                strides(spans),
                all,
                byLeg,
                cadence(all.strideTimeS()),
                pair(steps::times, "steps"),
                pair(steps::lengths, "measured steps"),
                found.brokenCount(),
                pair(
                        leg -> StrideReadings.present(found.of(leg), s -> StrideReadings.length(walk, s)),
                        "stride lengths"),
                pair(
                        leg -> StrideReadings.present(found.of(leg), s -> StrideReadings.stanceTime(walk, s)),
                        "stance times"),
                left,
                right,
                support,
                List.of(FootPhase.of(walk, lh, Leg.LF), FootPhase.of(walk, lh, Leg.RH), FootPhase.of(walk, lh, Leg.RF)),
                marks.isEmpty() ? Optional.empty() : Optional.of(BackArch.of(marks, question.level())),
                marks.isEmpty() ? Optional.empty() : Optional.of(headBob(marks, byLeg, strideTime)),
                walk.direction() < 0,
                warnings);
    }

    private HeadBob headBob(List<BodyMark> marks, Map<Leg, GaitResult.Means> byLeg, double strideTime) {
        GaitResult.Means lh = byLeg.get(Leg.LH);
        OptionalDouble own = lh == null
                ? OptionalDouble.empty()
                : lh.strideTimeS().estimate().value();
        return HeadBob.of(
                marks,
                own.orElse(strideTime),
                own.isPresent() ? "LH stride" : "mean stride of the other legs (LH has none)",
                question.level());
    }

    private GaitResult.Means meansOf(List<StrideSpan> spans, Function<List<Reading>, GaitFigure> figure, String who) {
        Function<Function<StrideSpan, Optional<Reading>>, GaitFigure> of = reading -> {
            GaitFigure made = figure.apply(StrideReadings.present(spans, reading));
            return made.estimate().value().isPresent() || spans.isEmpty()
                    ? made
                    : new GaitFigure(
                            Estimate.missing(
                                    0,
                                    made.estimate().method(),
                                    "no stride of " + who + " has what it is made from (lift-offs for times, x_m for"
                                            + " lengths)"),
                            Double.NaN,
                            0,
                            0,
                            0);
        };
        return new GaitResult.Means(
                of.apply(s -> Optional.of(StrideReadings.strideTime(walk, s))),
                of.apply(s -> StrideReadings.stanceTime(walk, s)),
                of.apply(s -> StrideReadings.swingTime(walk, s)),
                of.apply(s -> StrideReadings.dutyFactor(walk, s)),
                of.apply(s -> StrideReadings.length(walk, s)),
                of.apply(s -> StrideReadings.speed(walk, s)));
    }

    private GaitFigure trackingUp(StepReadings steps, Leg hind, double strideTime) {
        if (Double.isNaN(strideTime)) {
            return new GaitFigure(
                    Estimate.missing(0, "mean over prints", "no stride to tell which fore print a hind print follows"),
                    Double.NaN,
                    0,
                    0,
                    0);
        }
        return means.ofOneLeg(
                steps.trackingUp(hind, strideTime),
                "prints",
                "no print of " + hind + " follows one of " + hind.sameSide() + " with both x_m");
    }

    private GaitResult.Pair pair(Function<Leg, List<Reading>> readings, String what) {
        SymmetryFigure symmetry = new SymmetryFigure(means, rounds, question.level());
        return new GaitResult.Pair(
                symmetry.of(readings.apply(Leg.LF), readings.apply(Leg.RF), what + " of the fore legs"),
                symmetry.of(readings.apply(Leg.LH), readings.apply(Leg.RH), what + " of the hind legs"));
    }

    /** 60/T is monotone in T, so the ends of its interval are those of T turned round. */
    private static GaitFigure cadence(GaitFigure time) {
        Estimate t = time.estimate();
        String method = "60 / mean stride time; " + t.method();
        if (t.value().isEmpty()) {
            return new GaitFigure(Estimate.missing(0, method, t.why().orElse("")), Double.NaN, 0, 0, 0);
        }
        double seconds = t.value().getAsDouble();
        double slope = 60 / (seconds * seconds);
        boolean bounded = t.interval().isPresent() && t.interval().get().low() > 0;
        Estimate estimate = bounded
                ? Estimate.of(
                        60 / seconds,
                        60 / t.interval().get().high(),
                        60 / t.interval().get().low(),
                        t.n(),
                        method)
                : Estimate.pointOnly(
                        60 / seconds, t.n(), method, t.why().orElse("the interval of the stride time reaches 0"));
        return new GaitFigure(estimate, slope * time.spread(), slope * time.timing(), 0, 0);
    }

    private List<Stride> strides(List<StrideSpan> spans) {
        return spans.stream()
                .map(this::stride)
                .sorted(Comparator.comparingDouble(Stride::downS).thenComparing(Stride::leg))
                .toList();
    }

    private Stride stride(StrideSpan s) {
        Reading time = StrideReadings.strideTime(walk, s);
        Optional<Reading> stance = StrideReadings.stanceTime(walk, s);
        Optional<Reading> duty = StrideReadings.dutyFactor(walk, s);
        Optional<Reading> length = StrideReadings.length(walk, s);
        Optional<Reading> speed = StrideReadings.speed(walk, s);
        return new Stride(
                s.leg(),
                walk.time(s.down()),
                time.value(),
                value(stance),
                value(StrideReadings.swingTime(walk, s)),
                value(duty),
                value(length),
                value(speed),
                new Stride.Uncertainty(u(Optional.of(time)), u(stance), u(duty), u(length), u(speed)));
    }

    private double u(Optional<Reading> reading) {
        return reading.isEmpty() || !question.knowsMeasurement()
                ? 0
                : means.parts(List.of(new MeanFigure.Term(List.of(reading.get()), 1)), r -> 0)
                        .propagated();
    }

    private static OptionalDouble value(Optional<Reading> reading) {
        return reading.isPresent() ? OptionalDouble.of(reading.get().value()) : OptionalDouble.empty();
    }
}
