package levelback.scoring.bench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SplittableRandom;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import levelback.scoring.agreement.Agreement;
import levelback.scoring.agreement.AgreementQuestion;
import levelback.scoring.agreement.AgreementResult;
import levelback.scoring.agreement.Ratings;
import levelback.scoring.value.Estimate;

/**
 * Simulated coverage of every interval of agreement, 2,000 panels for each setting. Scorers follow the cumulative-logit
 * model, four levels, evenly spread severity; the truths are {@link AgreementTruth}'s. The intraclass correlations are
 * also simulated under the model they suppose: clips, scorers and errors normal and drawn anew, scores to a tenth.
 *
 * <p>By hand: {@code java -cp scoring/target/classes:scoring/target/test-classes:player/target/lib/*
 * levelback.scoring.bench.AgreementCoverage [RUNS [SETTING…]]}.
 */
public final class AgreementCoverage {

    private static final double[] THRESHOLDS = {-1, .8, 2.2};

    /**
     * A setting.
     *
     * @param clipSd of the clips on the logit scale: how far they agree
     * @param missing chance of a missing cell
     */
    private record Setting(String name, int clips, int scorers, double clipSd, double missing) {

        double[] shifts() {
            double[] shifts = new double[scorers];
            Arrays.setAll(shifts, s -> -.4 + .8 * s / (scorers - 1));
            return shifts;
        }
    }

    private static final Map<String, Function<AgreementResult, Estimate>> FIGURES = new LinkedHashMap<>();

    static {
        FIGURES.put("exactAgreement", AgreementResult::exactAgreement);
        FIGURES.put("withinOne", AgreementResult::withinOne);
        FIGURES.put("kappa", r -> r.pairs().get(0).kappa());
        FIGURES.put("kappaLinear", r -> r.pairs().get(0).kappaLinear());
        FIGURES.put("kappaQuadratic", r -> r.pairs().get(0).kappaQuadratic());
        FIGURES.put("bias", r -> r.pairs().get(0).bias());
        FIGURES.put("fleissKappa", AgreementResult::fleissKappa);
        FIGURES.put("ac1", AgreementResult::ac1);
        FIGURES.put("ac2Linear", AgreementResult::ac2Linear);
        FIGURES.put("ac2Quadratic", AgreementResult::ac2Quadratic);
        FIGURES.put("alphaNominal", AgreementResult::alphaNominal);
        FIGURES.put("alphaOrdinal", AgreementResult::alphaOrdinal);
        FIGURES.put("alphaInterval", AgreementResult::alphaInterval);
        FIGURES.put("kendallW", AgreementResult::kendallW);
        FIGURES.put("icc.oneWay", r -> r.icc().oneWay());
        FIGURES.put("icc.agreement", r -> r.icc().agreement());
        FIGURES.put("icc.consistency", r -> r.icc().consistency());
        FIGURES.put("icc.oneWayAverage", r -> r.icc().oneWayAverage());
        FIGURES.put("icc.agreementAverage", r -> r.icc().agreementAverage());
        FIGURES.put("icc.consistencyAverage", r -> r.icc().consistencyAverage());
        FIGURES.put("shift", r -> r.severity().get(0).shift());
        FIGURES.put("latent", r -> r.severity().get(0).latent());
    }

    private AgreementCoverage() {}

    /** @param args how many panels for each setting, 2,000 if not said; then the names of the settings wanted */
    public static void main(String[] args) {
        int runs = args.length > 0 ? Integer.parseInt(args[0]) : 2_000;
        List<String> wanted = Arrays.asList(args).subList(Math.min(1, args.length), args.length);
        double high = 4;
        double low = .8;
        for (Setting s : List.of(
                new Setting("60x5-low", 60, 5, low, 0),
                new Setting("60x5-high", 60, 5, high, 0),
                new Setting("20x2-low", 20, 2, low, 0),
                new Setting("20x2-high", 20, 2, high, 0),
                new Setting("20x5-low", 20, 5, low, 0),
                new Setting("20x5-high", 20, 5, high, 0),
                new Setting("60x2-high", 60, 2, high, 0),
                new Setting("60x5-high-missing", 60, 5, high, .2),
                new Setting("200x2-low", 200, 2, low, 0),
                new Setting("200x5-high-missing", 200, 5, high, .2),
                new Setting("200x5-low-missing", 200, 5, low, .2))) {
            if (wanted.isEmpty() || wanted.contains(s.name())) {
                Coverage.print(ordinal(s, runs));
            }
        }
        if (wanted.isEmpty() || wanted.contains("normal")) {
            List<Coverage> rows = new ArrayList<>();
            for (int clips : new int[] {20, 60, 200}) {
                rows.addAll(normal(clips, 5, 3, runs));
                rows.addAll(normal(clips, 2, .7, runs));
            }
            Coverage.print(rows);
        }
    }

    private static List<Coverage> ordinal(Setting s, int runs) {
        Map<String, Double> truths = new AgreementTruth(THRESHOLDS, s.shifts(), s.clipSd()).all();
        double[] shifts = s.shifts();
        truths.put("latent", shifts[0] - Arrays.stream(shifts).average().orElse(0));
        Map<Long, AgreementResult> results = new ConcurrentHashMap<>();
        AgreementQuestion question = new AgreementQuestion(.95, 1, 2_000, true);
        List<Coverage> rows = new ArrayList<>();
        FIGURES.forEach((name, figure) -> {
            double truth = Objects.requireNonNull(truths.get(name));
            rows.add(Coverage.of(name, s.name() + ", truth " + Math.round(truth * 1e3) / 1e3, runs, seed -> {
                AgreementResult result = results.computeIfAbsent(seed, k -> Agreement.of(panel(s, k), question));
                return new Coverage.Run(truth, figure.apply(result));
            }));
        });
        return rows;
    }

    private static Ratings panel(Setting s, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Ratings.Builder builder = new Ratings.Builder();
        double[] shifts = s.shifts();
        for (int c = 0; c < s.clips(); c++) {
            double clip = s.clipSd() * random.nextGaussian();
            for (int j = 0; j < s.scorers(); j++) {
                double chance = random.nextDouble();
                double at = clip + shifts[j] + Math.log(chance / (1 - chance));
                long level = Arrays.stream(THRESHOLDS).filter(t -> at > t).count();
                boolean blank = random.nextDouble() < s.missing();
                builder.add("s" + j, "c" + c, blank ? Double.NaN : level, "", 1);
            }
        }
        return builder.build(new double[] {0, 1, 2, 3});
    }

    private static List<Coverage> normal(int clips, int scorers, double clipSd, int runs) {
        double scorerSd = .4;
        double clip = clipSd * clipSd;
        double scorer = scorerSd * scorerSd;
        Map<String, Double> truths = Map.of(
                "icc.agreement", clip / (clip + scorer + 1),
                "icc.consistency", clip / (clip + 1),
                "icc.agreementAverage", clip / (clip + (scorer + 1) / scorers),
                "icc.consistencyAverage", clip / (clip + 1.0 / scorers));
        AgreementQuestion question = new AgreementQuestion(.95, 1, 0, false);
        Map<Long, AgreementResult> results = new ConcurrentHashMap<>();
        List<Coverage> rows = new ArrayList<>();
        truths.keySet().stream().sorted().forEach(name -> {
            double truth = Objects.requireNonNull(truths.get(name));
            Function<AgreementResult, Estimate> figure = Objects.requireNonNull(FIGURES.get(name));
            String setting = String.format("normal, %d x %d, truth %.3f", clips, scorers, truth);
            rows.add(Coverage.of(name, setting, runs, seed -> {
                AgreementResult result = results.computeIfAbsent(seed, k -> {
                    SplittableRandom random = new SplittableRandom(k);
                    double[] severity = new double[scorers];
                    Arrays.setAll(severity, j -> scorerSd * random.nextGaussian());
                    Ratings.Builder builder = new Ratings.Builder();
                    for (int c = 0; c < clips; c++) {
                        double of = clipSd * random.nextGaussian();
                        for (int j = 0; j < scorers; j++) {
                            double score = Math.rint(10 * (of + severity[j] + random.nextGaussian())) / 10;
                            builder.add("s" + j, "c" + c, score, "", 1);
                        }
                    }
                    return Agreement.of(builder.build(), question);
                });
                return new Coverage.Run(truth, figure.apply(result));
            }));
        });
        return rows;
    }
}
