package levelback.scoring.bench;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import levelback.scoring.proof.Comparison;
import levelback.scoring.proof.LesionSet;
import levelback.scoring.proof.Proof;
import levelback.scoring.proof.ProofComparison;
import levelback.scoring.proof.ProofQuestion;
import levelback.scoring.proof.ProofResult;
import levelback.scoring.proof.ScoreRow;
import levelback.scoring.proof.TrimRow;
import levelback.scoring.value.Estimate;

/**
 * Simulated coverage of every interval of the proof, 2,000 herds for each setting. The truths come from the model itself,
 * worked out by integration over the same herd on a large scale.
 *
 * <p>The model: a cow has a lesion at a visit with a chance that varies between cows (a beta with the mean
 * {@code prevalence} and the intra-cow correlation {@code like}); her score is 0 to 3 with chances that depend on the
 * lesion, the same share of the cows (strength {@code like} again) always scored by one draw of luck; a score of 2 or more
 * is lifted with chance .85, a lower one with chance {@code control}, which is on the card.
 *
 * <p>By hand: {@code java -cp scoring/target/classes:scoring/target/test-classes:player/target/lib/*
 * levelback.scoring.bench.ProofCoverage [RUNS]}.
 */
public final class ProofCoverage {

    private static final LocalDate DAY = LocalDate.of(2026, 1, 5);
    private static final double[] OF_SICK = {.10, .20, .40, .30};
    private static final double[] OF_SOUND = {.60, .25, .12, .03};

    /**
     * A setting.
     *
     * @param cows how many
     * @param visits of each cow
     * @param prevalence of lesions among visits
     * @param like share of cows whose visits are all alike
     * @param lame chance of a lift from score 2 on
     * @param control chance of a lift below
     */
    private record Setting(
            String name, int cows, int visits, double prevalence, double like, double lame, double control) {}

    private record Herd(List<ScoreRow> scores, List<TrimRow> trims) {}

    /** One run of a setting: its herd is drawn and proved once for all figures. */
    private record Key(Setting setting, long seed) {}

    private static final Map<Key, ProofResult> PROOFS = new ConcurrentHashMap<>();

    private ProofCoverage() {}

    /** @param args how many herds for each setting, 2,000 if not said */
    public static void main(String[] args) {
        int runs = args.length > 0 ? Integer.parseInt(args[0]) : 2_000;
        List<Setting> once = List.of(
                new Setting("200 cows once, all lifted", 200, 1, .3, 0, 1, 1),
                new Setting("60 cows once, all lifted", 60, 1, .3, 0, 1, 1),
                new Setting("300 cows once, rare (4 %)", 300, 1, .04, 0, 1, 1));
        List<Setting> again = List.of(
                new Setting("150 cows x 4, half alike", 150, 4, .3, .5, 1, 1),
                new Setting("40 cows x 6, half alike", 40, 6, .3, .5, 1, 1),
                new Setting("15 cows x 8, half alike", 15, 8, .3, .5, 1, 1),
                new Setting("150 cows x 4, rare, half alike", 150, 4, .05, .5, 1, 1),
                new Setting("80 cows x 5, all alike", 80, 5, .3, 1, 1, 1));
        List<Setting> some = List.of(
                new Setting("500 cows once, controls .1", 500, 1, .3, 0, .85, .1),
                new Setting("400 cows once, controls .05", 400, 1, .2, 0, .85, .05),
                new Setting("500 cows once, rare, controls .1", 500, 1, .05, 0, .85, .1),
                new Setting("150 cows x 4, half alike, controls .1", 150, 4, .3, .5, .85, .1));
        List<Coverage> rows = new ArrayList<>();
        for (Setting s : once) {
            observed(rows, s, runs, "Wilson", "LR, log", "AUC, DeLong");
            compared(rows, s, runs);
            PROOFS.clear();
        }
        for (Setting s : again) {
            observed(rows, s, runs, "clustered", "LR by cow", "AUC, Obuchowski");
            compared(rows, s, runs);
            PROOFS.clear();
        }
        for (Setting s : some) {
            for (String of : List.of("sensitivity", "specificity", "ppv", "npv", "prevalence", "auc")) {
                rows.add(cover(
                        "corrected " + of + ", delta",
                        s,
                        runs,
                        truth(of),
                        r -> r.correctedDelta().map(c -> of(c, of)).orElse(NONE)));
                rows.add(cover(
                        "corrected " + of + ", bootstrap",
                        s,
                        runs,
                        truth(of),
                        r -> r.correctedBootstrap().map(c -> of(c, of)).orElse(NONE)));
                rows.add(cover(
                        "corrected " + of + ", draws",
                        s,
                        runs,
                        truth(of),
                        r -> r.correctedDraws().map(c -> of(c, of)).orElse(NONE)));
            }
            PROOFS.clear();
            if (s.lame() < 1) {
                Setting allLame = new Setting(
                        s.name() + ", lame all", s.cows(), s.visits(), s.prevalence(), s.like(), 1, s.control());
                for (String of : List.of("sensitivity", "specificity", "ppv", "npv", "prevalence")) {
                    rows.add(cover(
                            "weighted " + of,
                            allLame,
                            runs,
                            truth(of),
                            r -> r.weighted().map(w -> of(w, of)).orElse(NONE)));
                    rows.add(cover(
                            "weighted " + of + ", draws",
                            allLame,
                            runs,
                            truth(of),
                            r -> r.weightedDraws().map(w -> of(w, of)).orElse(NONE)));
                }
            }
        }
        Coverage.print(rows);
    }

    private static final Estimate NONE = Estimate.missing(0, "", "nothing");

    private static void observed(List<Coverage> rows, Setting s, int runs, String share, String ratio, String area) {
        rows.add(cover(
                share + ": sensitivity",
                s,
                runs,
                truth("sensitivity"),
                r -> r.observed().sensitivity()));
        rows.add(cover(
                share + ": specificity",
                s,
                runs,
                truth("specificity"),
                r -> r.observed().specificity()));
        rows.add(cover(share + ": ppv", s, runs, truth("ppv"), r -> r.observed().ppv()));
        rows.add(cover(share + ": npv", s, runs, truth("npv"), r -> r.observed().npv()));
        rows.add(
                cover(ratio + " +", s, runs, truth("lr+"), r -> r.alternatives().lrPositive()));
        rows.add(
                cover(ratio + " -", s, runs, truth("lr-"), r -> r.alternatives().lrNegative()));
        rows.add(cover(
                "Youden, normal, as independent",
                s,
                runs,
                truth("youden"),
                r -> r.observed().youden()));
        rows.add(cover(
                "Youden, square and add",
                s,
                runs,
                truth("youden"),
                r -> r.alternatives().youden()));
        rows.add(cover(area, s, runs, truth("auc"), r -> r.observed().auc()));
        rows.add(cover(
                area + " on the logit, t",
                s,
                runs,
                truth("auc"),
                r -> r.alternatives().auc()));
        rows.add(cover(
                "net benefit at .2",
                s,
                runs,
                p -> truth("tp").of(p) - .25 * truth("fp").of(p),
                r -> r.netBenefit().stream()
                        .filter(at -> at.cut() == 2 && at.threshold() == .2)
                        .findFirst()
                        .map(ProofResult.AtThreshold::value)
                        .orElse(NONE)));
    }

    private static void compared(List<Coverage> rows, Setting s, int runs) {
        rows.add(compare(
                "difference of sensitivities", s, runs, c -> c.sensitivity().difference()));
        rows.add(compare(
                "difference of specificities", s, runs, c -> c.specificity().difference()));
        rows.add(compare("difference of areas", s, runs, c -> c.auc().difference()));
    }

    /** A truth from the prevalence. */
    @FunctionalInterface
    private interface Truth {
        double of(double prevalence);
    }

    private static Truth truth(String of) {
        double se = OF_SICK[2] + OF_SICK[3];
        double fpr = OF_SOUND[2] + OF_SOUND[3];
        double area = 0;
        double below = 0;
        for (int i = 0; i < OF_SICK.length; i++) {
            area += OF_SICK[i] * (below + OF_SOUND[i] / 2);
            below += OF_SOUND[i];
        }
        double auc = area;
        return switch (of) {
            case "sensitivity" -> p -> se;
            case "specificity" -> p -> 1 - fpr;
            case "ppv" -> p -> p * se / (p * se + (1 - p) * fpr);
            case "npv" -> p -> (1 - p) * (1 - fpr) / ((1 - p) * (1 - fpr) + p * (1 - se));
            case "lr+" -> p -> se / fpr;
            case "lr-" -> p -> (1 - se) / (1 - fpr);
            case "youden" -> p -> se - fpr;
            case "auc" -> p -> auc;
            case "tp" -> p -> p * se;
            case "fp" -> p -> (1 - p) * fpr;
            case "prevalence" -> p -> p;
            default -> throw new IllegalArgumentException(of);
        };
    }

    private static Estimate of(ProofResult.Corrected c, String of) {
        return switch (of) {
            case "sensitivity" -> c.sensitivity();
            case "specificity" -> c.specificity();
            case "ppv" -> c.ppv();
            case "npv" -> c.npv();
            case "prevalence" -> c.prevalence();
            case "auc" -> c.auc();
            default -> throw new IllegalArgumentException(of);
        };
    }

    private static Estimate of(ProofResult.Weighted w, String of) {
        return switch (of) {
            case "sensitivity" -> w.sensitivity();
            case "specificity" -> w.specificity();
            case "ppv" -> w.ppv();
            case "npv" -> w.npv();
            case "prevalence" -> w.prevalence();
            default -> throw new IllegalArgumentException(of);
        };
    }

    private static Coverage cover(
            String interval, Setting s, int runs, Truth truth, Function<ProofResult, Estimate> estimate) {
        return Coverage.of(
                interval,
                s.name(),
                runs,
                seed -> new Coverage.Run(
                        truth.of(s.prevalence()), estimate.apply(PROOFS.computeIfAbsent(new Key(s, seed), k -> {
                            Herd herd = herd(s, seed);
                            return Proof.of(herd.scores(), herd.trims(), QUESTION);
                        }))));
    }

    private static Coverage compare(
            String interval, Setting s, int runs, Function<ProofComparison, Estimate> estimate) {
        // Both scorers judge by the same chances, so every difference is 0.
        return Coverage.of(interval, s.name(), runs, seed -> {
            Herd herd = herd(s, seed);
            return new Coverage.Run(0, estimate.apply(Comparison.of(herd.scores(), herd.trims(), QUESTION, "A", "B")));
        });
    }

    private static final ProofQuestion QUESTION = new ProofQuestion(
            2, ProofQuestion.Unit.COW, 0, 14, LesionSet.of("any"), Optional.of("A"), Optional.empty(), .95, 1);

    private static Herd herd(Setting s, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<ScoreRow> scores = new ArrayList<>();
        List<TrimRow> trims = new ArrayList<>();
        for (int c = 0; c < s.cows(); c++) {
            String cow = "c" + c;
            boolean alike = random.nextDouble() < s.like();
            boolean sick = random.nextDouble() < s.prevalence();
            double luck = random.nextDouble();
            double luckB = random.nextDouble();
            for (int v = 0; v < s.visits(); v++) {
                if (!alike && v > 0) {
                    sick = random.nextDouble() < s.prevalence();
                    luck = random.nextDouble();
                    luckB = random.nextDouble();
                }
                LocalDate day = DAY.plusDays(21L * v);
                double score = score(sick ? OF_SICK : OF_SOUND, luck);
                scores.add(new ScoreRow(cow, day, score, "A", Optional.empty()));
                // B sees as A does in half of the cases.
                double other = score(sick ? OF_SICK : OF_SOUND, luckB < .5 ? luck : 2 * luckB - 1);
                scores.add(new ScoreRow(cow, day, other, "B", Optional.empty()));
                double chance = score >= 2 ? s.lame() : s.control();
                if (random.nextDouble() < chance) {
                    trims.add(new TrimRow(
                            cow,
                            day,
                            Optional.empty(),
                            sick ? "SU" : "NONE",
                            "",
                            score < 2 && chance < 1 ? OptionalDouble.of(chance) : OptionalDouble.empty()));
                }
            }
        }
        return new Herd(scores, trims);
    }

    private static double score(double[] of, double luck) {
        double sum = 0;
        for (int i = 0; i + 1 < of.length; i++) {
            sum += of[i];
            if (luck < sum) {
                return i;
            }
        }
        return of.length - 1;
    }
}
