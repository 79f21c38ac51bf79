package levelback.scoring.bench;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.function.Function;
import levelback.scoring.gait.Footfall;
import levelback.scoring.gait.Gait;
import levelback.scoring.gait.GaitQuestion;
import levelback.scoring.gait.GaitResult;
import levelback.scoring.gait.Symmetry;
import levelback.scoring.value.Estimate;
import levelback.scoring.value.Leg;

/**
 * Simulated coverage of the intervals of gait measures, 2,000 walks a setting.
 *
 * <p>The model: strides of 1.3 s and 1.4 m (Flower 2005, rounded) that differ from round to round by 4 % each; each event
 * by .015 s and each print by .02 m of its own; events rounded to the frames of a film that starts at any moment. Lame: LH
 * stands .1 s shorter and its partner's step is .06 s shorter. The truth of every figure is the figure of one walk of 20,000
 * strides read without frames.
 *
 * <p>By hand: {@code java -cp scoring/target/classes:scoring/target/test-classes:player/target/lib/*
 * levelback.scoring.bench.GaitCoverage [RUNS]}.
 */
public final class GaitCoverage {

    private static final Leg[] ORDER = {Leg.LH, Leg.LF, Leg.RH, Leg.RF};
    private static final double[] PHASE = {0, 0.2, 0.5, 0.7};

    private record Setting(String name, int downs, double frameHz, boolean lame) {}

    private GaitCoverage() {}

    /** Prints the table. */
    public static void main(String[] args) {
        int runs = args.length > 0 ? Integer.parseInt(args[0]) : 2_000;
        List<Coverage> rows = new ArrayList<>();
        for (Setting s : List.of(
                new Setting("2 strides a leg, 25 Hz, sound", 3, 25, false),
                new Setting("3 strides a leg, 25 Hz, sound", 4, 25, false),
                new Setting("3 strides a leg, 25 Hz, lame", 4, 25, true),
                new Setting("6 strides a leg, 25 Hz, lame", 7, 25, true),
                new Setting("6 strides a leg, 50 Hz, sound", 7, 50, false),
                new Setting("20 strides a leg, 50 Hz, lame", 21, 50, true))) {
            GaitResult longWalk =
                    Gait.of(walk(new SplittableRandom(4), 20_000, 0, s.lame()), List.of(), GaitQuestion.plain());
            Map<String, Double> truth = new LinkedHashMap<>();
            figures()
                    .forEach((name, figure) ->
                            truth.put(name, figure.apply(longWalk).value().orElseThrow()));
            figures()
                    .forEach((name, figure) -> rows.add(Coverage.of(name, s.name(), runs, seed -> {
                        SplittableRandom random = new SplittableRandom(seed);
                        GaitResult result = Gait.of(
                                walk(random, s.downs(), s.frameHz(), s.lame()),
                                List.of(),
                                GaitQuestion.plain().atFrameRate(s.frameHz()));
                        return new Coverage.Run(truth.getOrDefault(name, Double.NaN), figure.apply(result));
                    })));
        }
        Coverage.print(rows);
    }

    private static Map<String, Function<GaitResult, Estimate>> figures() {
        Map<String, Function<GaitResult, Estimate>> figures = new LinkedHashMap<>();
        figures.put("stride time", r -> r.all().strideTimeS().estimate());
        figures.put("stance time", r -> r.all().stanceTimeS().estimate());
        figures.put("swing time", r -> r.all().swingTimeS().estimate());
        figures.put("duty factor", r -> r.all().dutyFactor().estimate());
        figures.put("stride length", r -> r.all().strideLengthM().estimate());
        figures.put("speed", r -> r.all().speedMPerS().estimate());
        figures.put("cadence", r -> r.cadencePerMin().estimate());
        figures.put("stance time of LH", r -> ofLh(r, g -> g.stanceTimeS().estimate()));
        figures.put("stride time of LH", r -> ofLh(r, g -> g.strideTimeS().estimate()));
        figures.put("tracking up, left", r -> r.trackingUpLeftM().estimate());
        figures.put(
                "stance symmetry, hind", r -> estimate(r.stanceTimeSymmetry().hind()));
        figures.put("step time symmetry, hind", r -> estimate(r.stepTimeS().hind()));
        figures.put("step length symmetry, hind", r -> estimate(r.stepLengthM().hind()));
        return figures;
    }

    private static Estimate ofLh(GaitResult result, Function<GaitResult.Means, Estimate> figure) {
        return Optional.ofNullable(result.byLeg().get(Leg.LH))
                .map(figure)
                .orElseGet(() -> Estimate.missing(0, "", "no stride of LH"));
    }

    private static Estimate estimate(Symmetry symmetry) {
        long n = symmetry.nLeft() + symmetry.nRight();
        if (symmetry.index().isEmpty()) {
            return Estimate.missing(n, symmetry.method(), "no index");
        }
        return symmetry.interval()
                .map(i -> Estimate.of(symmetry.index().getAsDouble(), i.low(), i.high(), n, symmetry.method()))
                .orElseGet(
                        () -> Estimate.pointOnly(symmetry.index().getAsDouble(), n, symmetry.method(), "no interval"));
    }

    private static List<Footfall> walk(SplittableRandom random, int downs, double frameHz, boolean lame) {
        double start = random.nextDouble();
        double[] time = new double[downs + 1];
        double[] place = new double[downs + 1];
        for (int r = 1; r <= downs; r++) {
            time[r] = time[r - 1] + 1.3 * (1 + 0.04 * random.nextGaussian());
            place[r] = place[r - 1] + 1.4 * (1 + 0.04 * random.nextGaussian());
        }
        List<Footfall> falls = new ArrayList<>();
        for (int r = 0; r < downs; r++) {
            double stride = time[r + 1] - time[r];
            double length = place[r + 1] - place[r];
            for (int leg = 0; leg < ORDER.length; leg++) {
                boolean lateRight = lame && ORDER[leg] == Leg.RH;
                double down = time[r] + PHASE[leg] * stride - (lateRight ? 0.06 : 0) + 0.015 * random.nextGaussian();
                double stance = 0.65 * stride - (lame && ORDER[leg] == Leg.LH ? 0.1 : 0);
                double up = down + stance + 0.015 * random.nextGaussian();
                double x = place[r] + PHASE[leg] * length + 0.02 * random.nextGaussian();
                falls.add(Footfall.of(
                        frame(down, start, frameHz), ORDER[leg], Footfall.Event.DOWN, OptionalDouble.of(x)));
                falls.add(Footfall.of(frame(up, start, frameHz), ORDER[leg], Footfall.Event.UP, OptionalDouble.of(x)));
            }
        }
        return List.copyOf(falls);
    }

    private static double frame(double at, double start, double hz) {
        return hz == 0 ? at + 10 : Math.rint((at + start) * hz) / hz + 10;
    }
}
