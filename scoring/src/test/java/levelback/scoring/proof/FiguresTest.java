package levelback.scoring.proof;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import levelback.scoring.proof.CheckValues.Json;
import levelback.scoring.proof.Observation.Box;
import levelback.scoring.proof.VerificationBias.Figure;
import levelback.scoring.value.Estimate;
import levelback.scoring.value.Interval;
import org.junit.jupiter.api.Test;

/** Each method by itself against its reference; sources in the files and in README.md beside them. */
class FiguresTest {

    /** prop.test of R and statsmodels, to 1e-9. */
    @Test
    void wilsonEqualsTheReference() {
        for (Json c : CheckValues.json("proportions.json").at("cases").items()) {
            Interval got = Proportions.wilson(
                    c.at("x").whole(), c.at("n").whole(), c.at("level").number());
            assertThat(got.low()).isCloseTo(c.at("wilson", 0).number(), within(1e-9));
            assertThat(got.high()).isCloseTo(c.at("wilson", 1).number(), within(1e-9));
        }
        assertThat(Proportions.wilson(0, 10, .95).low()).isZero();
        assertThat(Proportions.wilson(10, 10, .95).high()).isEqualTo(1);
    }

    /** epiR 2.0.57, to 1e-7; a zero cell gives no interval and a zero denominator no value. */
    @Test
    void likelihoodRatiosAndYoudenEqualTheReference() {
        for (Json c : CheckValues.json("two-by-two.json").at("cases").items()) {
            TwoByTwo table = new TwoByTwo(
                    c.at("tp").whole(),
                    c.at("fp").whole(),
                    c.at("fn").whole(),
                    c.at("tn").whole());
            triple(table.lrPositive(.95, false), c.at("lrPositive"));
            triple(table.lrNegative(.95, false), c.at("lrNegative"));
            assertThat(table.youden(.95, false).value().orElseThrow())
                    .isCloseTo(c.at("youden").number(), within(1e-7));
        }
        assertThat(new TwoByTwo(5, 0, 237, 217).lrPositive(.95, false).value()).isEmpty();
        assertThat(new TwoByTwo(15, 28, 0, 23).lrNegative(.95, false).value()).hasValue(0);
    }

    /** survey::svyciprop of R, to 1e-8. */
    @Test
    void clusteredProportionEqualsTheReference() {
        Json c = CheckValues.json("auc-rank-cluster.json").at("clusteredProportion");
        double[] y = c.at("y").numbers();
        double[] cow = c.at("cow").numbers();
        double[] x = new double[40];
        double[] n = new double[40];
        for (int i = 0; i < y.length; i++) {
            x[(int) cow[i]] += y[i];
            n[(int) cow[i]]++;
        }
        Estimate got = Proportions.clustered(x, n, .95, "");
        assertThat(got.value().orElseThrow()).isCloseTo(c.at("ratio").number(), within(1e-8));
        assertThat(got.interval().orElseThrow().low())
                .isCloseTo(c.at("logitLow").number(), within(1e-8));
        assertThat(got.interval().orElseThrow().high())
                .isCloseTo(c.at("logitHigh").number(), within(1e-8));
    }

    /** pROC 1.18.0, to 1e-8. */
    @Test
    void areaWithTiesAndDeLongEqualTheReference() {
        for (Json c : CheckValues.json("auc-rank-cluster.json").at("auc").items()) {
            List<Observation> lifted = new ArrayList<>();
            for (double s : c.at("neg").numbers()) {
                lifted.add(observation("n" + lifted.size(), s, Box.NO_LESION));
            }
            for (double s : c.at("pos").numbers()) {
                lifted.add(observation("p" + lifted.size(), s, Box.WITH_LESION));
            }
            Estimate got = RocArea.of(new ScoredRows(lifted), .95, false);
            assertThat(got.value().orElseThrow()).isCloseTo(c.at("auc").number(), within(1e-8));
            assertThat(got.interval().orElseThrow().low()).isCloseTo(c.at("low").number(), within(1e-8));
            assertThat(got.interval().orElseThrow().high())
                    .isCloseTo(c.at("high").number(), within(1e-8));
        }
    }

    /**
     * Obuchowski's estimator with every observation as its own cow must give DeLong's, and with every observation doubled
     * inside its cow must give the variance of the single ones (common sense of the formula, no source).
     */
    @Test
    void clusteredAreaFallsBackToDeLong() {
        List<Observation> once = new ArrayList<>();
        List<Observation> twice = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            Observation o = observation("c%02d".formatted(i), i * 5 % 4, i % 3 == 0 ? Box.WITH_LESION : Box.NO_LESION);
            once.add(o);
            twice.add(o);
            twice.add(o);
        }
        Interval alone =
                RocArea.onLogit(new ScoredRows(once), .95, false).interval().orElseThrow();
        Interval asClusters =
                RocArea.of(new ScoredRows(once), .95, true).interval().orElseThrow();
        Interval doubled =
                RocArea.of(new ScoredRows(twice), .95, true).interval().orElseThrow();
        // The cross term adds the factor C/(C-1) only; every cow is in one group, so it vanishes here.
        assertThat(asClusters.low()).isCloseTo(alone.low(), within(1e-12));
        assertThat(doubled.low()).isCloseTo(alone.low(), within(1e-12));
        assertThat(doubled.high()).isCloseTo(alone.high(), within(1e-12));
    }

    /** Delta method on the logit, R and Python, to 1e-9; 20,000 resamples of Python to .01. */
    @Test
    void correctionByScoreLevelEqualsTheReference() {
        for (String name : List.of("hepatic", "byScore")) {
            Json c = CheckValues.json("begg-greenes.json").at(name);
            double[] scored = c.at("scored").numbers();
            double[] lifted = c.at("lifted").numbers();
            double[] sick = c.at("withLesion").numbers();
            List<Observation> rows = new ArrayList<>();
            for (int level = 0; level < scored.length; level++) {
                for (int i = 0; i < scored[level]; i++) {
                    Box box = i < sick[level] ? Box.WITH_LESION : i < lifted[level] ? Box.NO_LESION : Box.NEVER_LIFTED;
                    rows.add(observation(level + "-" + i, level, box));
                }
            }
            ScoredRows counted = new ScoredRows(rows);
            int cut = counted.levelOf(c.at("cut").number());
            VerificationBias bias = VerificationBias.of(counted.counts, cut).orElseThrow();
            CorrectedDelta delta = new CorrectedDelta(bias, counted, .95, false);
            equal(delta.estimate(Figure.SENSITIVITY), c.at("expected", "sensitivity"), 1e-9);
            equal(delta.estimate(Figure.SPECIFICITY), c.at("expected", "specificity"), 1e-9);
            equal(delta.estimate(Figure.PREVALENCE), c.at("expected", "prevalence"), 1e-9);
            equal(delta.estimate(Figure.AUC), c.at("expected", "auc"), 1e-7);
            CowBootstrap drawn = new CowBootstrap(bias, counted, cut, .95, 1);
            ends(drawn.estimate(Figure.SENSITIVITY), c.at("bootstrap", "sensitivity"), .01);
            ends(drawn.estimate(Figure.SPECIFICITY), c.at("bootstrap", "specificity"), .01);
            ends(drawn.estimate(Figure.PREVALENCE), c.at("bootstrap", "prevalence"), .01);
            ends(drawn.estimate(Figure.AUC), c.at("bootstrap", "auc"), .01);
        }
    }

    /** The formula of Vickers & Elkin 2006 on the counts of Bicalho 2007, cut 3 (check values), to 1e-9. */
    @Test
    void netBenefitEqualsTheReference() {
        List<Observation> lifted = new ArrayList<>();
        for (int i = 0; i < 223 + 105 + 19 + 112; i++) {
            boolean sick = i < 223 || (i >= 328 && i < 347);
            lifted.add(observation("c" + i, i < 328 ? 3 : 2, sick ? Box.WITH_LESION : Box.NO_LESION));
        }
        lifted.sort(java.util.Comparator.comparing(Observation::cow));
        CutCounts counts = new CutSweep(new ScoredRows(lifted)).downTo(1);
        List<ProofResult.AtThreshold> curve = NetBenefit.at(3, counts, Optional.empty(), .95, false);
        for (Json c : CheckValues.json("net-benefit.json").at("cases").items()) {
            double threshold = c.at("threshold").number();
            ProofResult.AtThreshold at = curve.stream()
                    .filter(t -> Math.abs(t.threshold() - threshold) < 1e-12)
                    .findFirst()
                    .orElseThrow();
            assertThat(at.value().value().orElseThrow()).isCloseTo(c.at("cut3").number(), within(1e-9));
            assertThat(at.liftAll().orElseThrow()).isCloseTo(c.at("liftAll").number(), within(1e-9));
            assertThat(at.corrected()).isEmpty();
        }
    }

    /** binom.test(0, 7) of R 4.2.2: upper end .4096164; by symmetry at all of 7. */
    @Test
    void noneOrAllOfRepeatedCowsIsNoneOrAllOfAsManyCows() {
        double[] of = {3, 1, 4, 1, 5, 2, 6};
        Estimate none = Proportions.clustered(new double[7], of, .95, "");
        assertThat(none.value()).hasValue(0);
        assertThat(none.interval().orElseThrow().low()).isZero();
        assertThat(none.interval().orElseThrow().high()).isCloseTo(.4096164, within(1e-7));
        assertThat(none.method()).contains("cluster");
        Estimate all = Proportions.clustered(of, of, .95, "");
        assertThat(all.interval().orElseThrow().low()).isCloseTo(1 - .4096164, within(1e-7));
        assertThat(all.n()).isEqualTo(22);
    }

    /** Solano et al. 2017, dermatitis in the parlour against the chute: predictive values from Se, Sp and prevalence. */
    @Test
    void predictiveValuesOfAPublishedTestComeOut() {
        Json v = CheckValues.json("published.json").at("facts").items().stream()
                .filter(f -> f.at("key").text().equals("solano-2017"))
                .findFirst()
                .orElseThrow()
                .at("values");
        double sick = v.at("prevalence").number() * 10_000;
        long tp = Math.round(sick * v.at("sensitivity").number());
        long fp = Math.round((10_000 - sick) * (1 - v.at("specificity").number()));
        long fn = Math.round(sick) - tp;
        long tn = 10_000 - Math.round(sick) - fp;
        assertThat(Proportions.estimate(tp, tp + fp, .95, "").value().orElseThrow())
                .isCloseTo(v.at("recomputed", "ppv").number(), within(1e-9));
        assertThat(Proportions.estimate(tn, tn + fn, .95, "").value().orElseThrow())
                .isCloseTo(v.at("recomputed", "npv").number(), within(1e-9));
    }

    private static void triple(Estimate got, Json expected) {
        if (expected.isNull()) {
            assertThat(got.interval()).isEmpty();
            assertThat(got.why()).isPresent();
            return;
        }
        assertThat(got.value().orElseThrow()).isCloseTo(expected.at(0).number(), within(1e-7));
        assertThat(got.interval().orElseThrow().low()).isCloseTo(expected.at(1).number(), within(1e-7));
        assertThat(got.interval().orElseThrow().high()).isCloseTo(expected.at(2).number(), within(1e-7));
    }

    private static void equal(Estimate got, Json expected, double tolerance) {
        assertThat(got.value().orElseThrow()).isCloseTo(expected.at("value").number(), within(tolerance));
        ends(got, expected, tolerance);
    }

    private static void ends(Estimate got, Json expected, double tolerance) {
        assertThat(got.interval().orElseThrow().low())
                .isCloseTo(expected.at("low").number(), within(tolerance));
        assertThat(got.interval().orElseThrow().high())
                .isCloseTo(expected.at("high").number(), within(tolerance));
    }

    private static Observation observation(String cow, double score, Box box) {
        return new Observation(
                cow,
                LocalDate.of(2026, 3, 2),
                "",
                Set.of(),
                score,
                1,
                box,
                OptionalInt.empty(),
                List.of(),
                Set.of(),
                1);
    }
}
