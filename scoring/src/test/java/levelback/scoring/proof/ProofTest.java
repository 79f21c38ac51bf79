package levelback.scoring.proof;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import levelback.scoring.proof.CheckValues.Json;
import levelback.scoring.proof.ProofQuestion.Unit;
import levelback.scoring.value.Estimate;
import levelback.scoring.value.Leg;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Whole files and published tables against R and Python; sources in the files themselves and in README.md beside them. */
class ProofTest {

    private static final Map<String, ProofQuestion> QUESTIONS = Map.of(
            "once", CheckValues.question(2, Unit.COW, 0, 14, "alarm"),
            "repeated", CheckValues.question(2, Unit.COW, 0, 10, "any"),
            "legs", CheckValues.question(2, Unit.LEG, 0, 14, "SU,WLA,BU"),
            "hepatic", CheckValues.question(1, Unit.COW, 0, 14, "any"),
            "control-lifts", CheckValues.question(2, Unit.COW, 0, 14, "alarm"));

    @ParameterizedTest
    @ValueSource(strings = {"once", "repeated", "legs", "hepatic", "control-lifts"})
    void countsAndObservedFiguresEqualTheReference(String name) {
        ProofResult result = file(name);
        Json expected = CheckValues.json(name + ".json");
        assertThat(result.scored()).isEqualTo(expected.at("counts", "scored").whole());
        assertThat(result.counts().lifted())
                .isEqualTo(expected.at("counts", "lifted").whole());
        assertThat(result.counts().tp()).isEqualTo(expected.at("counts", "tp").whole());
        assertThat(result.counts().fp()).isEqualTo(expected.at("counts", "fp").whole());
        assertThat(result.counts().fn()).isEqualTo(expected.at("counts", "fn").whole());
        assertThat(result.counts().tn()).isEqualTo(expected.at("counts", "tn").whole());
        List<Json> byScore = expected.at("byScore").items();
        assertThat(result.byScore()).hasSameSizeAs(byScore);
        for (int i = 0; i < byScore.size(); i++) {
            assertThat(result.byScore().get(i))
                    .isEqualTo(new ProofResult.AtScore(
                            byScore.get(i).at("score").number(),
                            byScore.get(i).at("scored").whole(),
                            byScore.get(i).at("lifted").whole(),
                            byScore.get(i).at("withLesion").whole()));
        }
        ProofResult.Observed o = result.observed();
        same(o.sensitivity(), expected.at("observed", "sensitivity"), 1e-6);
        same(o.specificity(), expected.at("observed", "specificity"), 1e-6);
        same(o.ppv(), expected.at("observed", "ppv"), 1e-6);
        same(o.npv(), expected.at("observed", "npv"), 1e-6);
        same(o.lrPositive(), expected.at("observed", "lrPositive"), 1e-6);
        same(o.lrNegative(), expected.at("observed", "lrNegative"), 1e-6);
        same(o.youden(), expected.at("observed", "youden"), 1e-6);
        assertThat(o.sensitivity().n())
                .isEqualTo(expected.at("observed", "sensitivity", "n").whole());
        assertThat(o.sensitivity().method().contains("cluster")).isEqualTo(result.clustered());
        assertThat(o.auc().value().orElseThrow())
                .isCloseTo(expected.at("observed", "auc", "value").number(), within(1e-9));
    }

    @ParameterizedTest
    @ValueSource(strings = {"once", "hepatic", "control-lifts"})
    void independentAreaAndCorrectionEqualTheReference(String name) {
        ProofResult result = file(name);
        Json expected = CheckValues.json(name + ".json");
        same(result.observed().auc(), expected.at("observed", "auc"), 1e-6);
        ProofResult.Corrected c = result.corrected().orElseThrow();
        same(c.sensitivity(), expected.at("corrected", "sensitivity"), 1e-6);
        same(c.specificity(), expected.at("corrected", "specificity"), 1e-6);
        same(c.prevalence(), expected.at("corrected", "prevalence"), 1e-6);
        same(c.auc(), expected.at("corrected", "auc"), 1e-6);
        assertThat(result.whyNotCorrected()).isEmpty();
    }

    /** Where cows repeat: values exact, intervals near the bootstrap over cows (tolerance of the check values: .02). */
    @ParameterizedTest
    @ValueSource(strings = {"repeated", "legs"})
    void clusteredAreaAndCorrectionComeNearTheBootstrapOverCows(String name) {
        ProofResult result = file(name);
        Json expected = CheckValues.json(name + ".json");
        ProofResult.Corrected c = result.corrected().orElseThrow();
        near(result.observed().auc(), expected.at("observed", "auc"), expected.at("cowBootstrap", "auc"));
        near(
                c.sensitivity(),
                expected.at("corrected", "sensitivity"),
                expected.at("cowBootstrap", "corrected.sensitivity"));
        near(
                c.specificity(),
                expected.at("corrected", "specificity"),
                expected.at("cowBootstrap", "corrected.specificity"));
        near(
                c.prevalence(),
                expected.at("corrected", "prevalence"),
                expected.at("cowBootstrap", "corrected.prevalence"));
        near(c.auc(), expected.at("corrected", "auc"), expected.at("cowBootstrap", "corrected.auc"));
        assertThat(c.sensitivity().method()).contains("cluster");
    }

    /** A book names cows by identities of its own, a table by their numbers: that may move no figure. */
    @ParameterizedTest
    @ValueSource(strings = {"repeated", "legs"})
    void namesOfCowsMoveNoInterval(String name) {
        ProofResult result = file(name);
        ProofResult renamed = Proof.of(
                CheckValues.scores(CheckValues.text(name + "-scores.csv")).stream()
                        .map(row -> new ScoreRow(other(row.cow()), row.date(), row.score(), row.scorer(), row.leg()))
                        .toList(),
                CheckValues.trims(CheckValues.text(name + "-trims.csv")).stream()
                        .map(row -> new TrimRow(
                                other(row.cow()), row.date(), row.leg(), row.lesion(), row.stage(), row.chance()))
                        .toList(),
                Objects.requireNonNull(QUESTIONS.get(name)));
        assertThat(renamed.corrected()).isEqualTo(result.corrected());
    }

    private static String other(String cow) {
        return new StringBuilder(cow).reverse() + "-" + cow.hashCode() % 7;
    }

    @ParameterizedTest
    @ValueSource(strings = {"once", "repeated", "legs", "hepatic"})
    void trendLesionsAndCutsEqualTheReference(String name) {
        ProofResult result = file(name);
        Json expected = CheckValues.json(name + ".json");
        double statistic = expected.at("trend", "statistic").number();
        assertThat(result.trend().statistic().orElseThrow()).isCloseTo(statistic, within(1e-6));
        double p = expected.at("trend", "pValue").number();
        assertThat(result.trend().pValue().orElseThrow()).isCloseTo(p, within(p * 1e-6));
        List<Json> lesions = expected.at("byLesion").items();
        assertThat(result.byLesion()).hasSameSizeAs(lesions);
        for (int i = 0; i < lesions.size(); i++) {
            ProofResult.OfLesion got = result.byLesion().get(i);
            assertThat(got.lesion()).isEqualTo(lesions.get(i).at("lesion").text());
            assertThat(got.n()).isEqualTo(lesions.get(i).at("n").whole());
            assertThat(got.sensitivity())
                    .isCloseTo(lesions.get(i).at("sensitivity").number(), within(1e-9));
        }
        List<Json> cuts = expected.at("cuts").items();
        assertThat(result.cuts()).hasSameSizeAs(cuts);
        for (int i = 0; i < cuts.size(); i++) {
            ProofResult.AtCut got = result.cuts().get(i);
            assertThat(got.cut()).isEqualTo(cuts.get(i).at("cut").number());
            assertThat(got.sensitivity().value().orElseThrow())
                    .isCloseTo(cuts.get(i).at("sensitivity").number(), within(1e-9));
            assertThat(got.specificity().value().orElseThrow())
                    .isCloseTo(cuts.get(i).at("specificity").number(), within(1e-9));
        }
    }

    /** Against survey::svyratio of R, to the tolerance of the check values. */
    @Test
    void controlLiftsWeighByTheirChance() {
        ProofResult.Weighted w = file("control-lifts").weighted().orElseThrow();
        Json expected = CheckValues.json("control-lifts.json").at("weighted");
        same(w.sensitivity(), expected.at("sensitivity"), 1e-8);
        same(w.specificity(), expected.at("specificity"), 1e-8);
        same(w.prevalence(), expected.at("prevalence"), 1e-8);
        same(w.ppv(), expected.at("ppv"), 1e-8);
        same(w.npv(), expected.at("npv"), 1e-8);
        assertThat(file("once").weighted()).isEmpty();
    }

    /** Small example counted by hand. */
    @Test
    void legsAreMatched() {
        Json hand = CheckValues.json("leg-match.json");
        List<ScoreRow> scores = CheckValues.scores(hand.at("scoresCsv").text());
        List<TrimRow> trims = CheckValues.trims(hand.at("trimsCsv").text());
        ProofResult cows = Proof.of(scores, trims, CheckValues.question(2, Unit.COW, 0, 14, "alarm"));
        assertThat(cows.counts()).isEqualTo(counts(hand.at("cowLevel")));
        ProofResult legs = Proof.of(scores, trims, CheckValues.question(2, Unit.LEG, 0, 14, "alarm"));
        assertThat(legs.counts()).isEqualTo(counts(hand.at("legLevelScoredLegsOnly")));
        assertThat(cows.byLeg())
                .containsExactlyInAnyOrder(
                        new ProofResult.LegPair(Leg.RF, Leg.RH, 1),
                        new ProofResult.LegPair(Leg.LH, Leg.LH, 2),
                        new ProofResult.LegPair(Leg.LH, Leg.RH, 1),
                        new ProofResult.LegPair(Leg.RH, Leg.LH, 1),
                        new ProofResult.LegPair(Leg.RH, Leg.RH, 1));
    }

    /** Bicalho et al. 2007, herd 1, counts reconstructed from percentages by score (published.json). */
    @Test
    void aPublishedTableByScoreComesOutAtEveryCut() {
        Json fact = CheckValues.json("published.json").at("facts").items().stream()
                .filter(f -> f.at("key").text().equals("bicalho-2007-herd1"))
                .findFirst()
                .orElseThrow()
                .at("values");
        double[] cows = fact.at("cows").numbers();
        double[] sick = fact.at("withPainfulLesion").numbers();
        List<ScoreRow> scores = new ArrayList<>();
        List<TrimRow> trims = new ArrayList<>();
        for (int level = 0; level < cows.length; level++) {
            for (int i = 0; i < cows[level]; i++) {
                add(scores, trims, level + "-" + i, level + 1, i < sick[level] ? "SU" : "NONE");
            }
        }
        ProofResult result = Proof.of(scores, trims, CheckValues.question(3, Unit.COW, 0, 14, "any"));
        for (ProofResult.AtCut cut : result.cuts()) {
            Json expected = fact.at("byCut").at(String.valueOf((int) cut.cut()));
            assertThat(cut.sensitivity().value().orElseThrow())
                    .isCloseTo(expected.at("sensitivity").number(), within(1e-9));
            assertThat(cut.specificity().value().orElseThrow())
                    .isCloseTo(expected.at("specificity").number(), within(1e-9));
        }
        assertThat(result.counts()).isEqualTo(counts(fact.at("byCut", "3")));
        assertThat(result.observed().auc().value().orElseThrow())
                .isCloseTo(fact.at("auc").number(), within(1e-9));
        assertThat(result.trend().statistic().orElseThrow())
                .isCloseTo(fact.at("trend", "statistic").number(), within(1e-6));
    }

    /** Two-level correction: printed .8365 and .7384 (Drum & Christacopoulos 1972 counts; Begg & Greenes 1983). */
    @Test
    void thePublishedCorrectionComesOut() {
        ProofResult.Corrected c = file("hepatic").corrected().orElseThrow();
        assertThat(c.sensitivity().value().orElseThrow()).isCloseTo(.8365, within(5e-5));
        assertThat(c.specificity().value().orElseThrow()).isCloseTo(.7384, within(5e-5));
        assertThat(c.ppv().value().orElseThrow()).isCloseTo(.8783, within(5e-5));
        assertThat(c.npv().value().orElseThrow()).isCloseTo(.6667, within(5e-5));
        assertThat(c.prevalence().value().orElseThrow()).isCloseTo(.6930, within(5e-5));
    }

    @Test
    void tooFewLiftedSoundCowsAreSaidInWords() {
        List<ScoreRow> scores = new ArrayList<>();
        List<TrimRow> trims = new ArrayList<>();
        for (int i = 0; i < 20; i++) {
            add(scores, trims, "lame" + i, 2, i % 2 == 0 ? "SU" : "NONE");
            scores.add(new ScoreRow("sound" + i, DAY, 0, "A", Optional.empty()));
        }
        for (int i = 0; i < 4; i++) {
            add(scores, trims, "control" + i, 0, "NONE");
        }
        ProofResult result = Proof.of(scores, trims, CheckValues.question(2, Unit.COW, 0, 14, "alarm"));
        assertThat(result.corrected()).isEmpty();
        assertThat(result.whyNotCorrected())
                .isEqualTo("Cannot be estimated: 4 sound-scoring cows lifted, 5 needed. Draw control lifts.");
        add(scores, trims, "control4", 0, "NONE");
        assertThat(Proof.of(scores, trims, CheckValues.question(2, Unit.COW, 0, 14, "alarm"))
                        .corrected())
                .isPresent();
    }

    /** By the rule of pooling: level 1 (nearer the cut 2) takes in level 0, of which none was lifted; by hand. */
    @Test
    void aLevelWithNoneLiftedIsPooledTowardsTheCut() {
        long[] levels = {100, 0, 0, 50, 10, 2, 20, 0, 0, 30, 10, 8};
        VerificationBias bias = VerificationBias.of(levels, 2).orElseThrow();
        // Lesions: below 150 x .2 = 30, above 50 x .8 = 40.
        assertThat(bias.value(VerificationBias.Figure.SENSITIVITY).orElseThrow())
                .isCloseTo(40.0 / 70, within(1e-12));
        assertThat(bias.value(VerificationBias.Figure.SPECIFICITY).orElseThrow())
                .isCloseTo(120.0 / 130, within(1e-12));
    }

    @Test
    void aWindowStillOpenIsLeftOutAndCounted() {
        List<ScoreRow> scores = new ArrayList<>();
        List<TrimRow> trims = new ArrayList<>();
        add(scores, trims, "a", 2, "SU");
        scores.add(new ScoreRow("b", DAY, 2, "A", Optional.empty()));
        scores.add(new ScoreRow("c", DAY.minusDays(20), 2, "A", Optional.empty()));
        scores.add(new ScoreRow("d", DAY.minusDays(20), 0, "A", Optional.empty()));
        trims.add(new TrimRow("d", DAY.minusDays(19), Optional.empty(), "REFUSED", "", OptionalDouble.of(.1)));
        trims.add(new TrimRow("nobody", DAY, Optional.of(Leg.LH), "SU", "", OptionalDouble.empty()));
        ProofQuestion until = new ProofQuestion(
                2, Unit.COW, 0, 14, LesionSet.alarm(), Optional.empty(), Optional.of(DAY.plusDays(13)), .95, 1);
        ProofResult result = Proof.of(scores, trims, until);
        assertThat(result.flow())
                .containsExactly(
                        new ProofResult.Step("rows", 4),
                        new ProofResult.Step("windowOpen", 1),
                        new ProofResult.Step("scored", 3),
                        new ProofResult.Step("neverLifted", 1),
                        new ProofResult.Step("refused", 1),
                        new ProofResult.Step("lifted", 1),
                        new ProofResult.Step("withLesion", 1),
                        new ProofResult.Step("trimsOfUnscored", 1));
        assertThat(result.weighted()).isEmpty();
    }

    @Test
    void whatTheDataCannotCarryIsMissingWithAReason() {
        ProofQuestion question = CheckValues.question(2, Unit.COW, 0, 14, "alarm");
        for (ProofResult result : List.of(
                Proof.of(List.of(), List.of(), question),
                Proof.of(List.of(new ScoreRow("a", DAY, 1, "", Optional.empty())), List.of(), question))) {
            ProofResult.Observed o = result.observed();
            for (Estimate e : List.of(
                    o.sensitivity(),
                    o.specificity(),
                    o.ppv(),
                    o.npv(),
                    o.lrPositive(),
                    o.lrNegative(),
                    o.youden(),
                    o.auc())) {
                assertThat(e.value()).isEmpty();
                assertThat(e.why().orElseThrow()).isNotBlank();
            }
            assertThat(result.corrected()).isEmpty();
            assertThat(result.trend().why()).isNotBlank();
        }
    }

    @Test
    void oneCowOverAndOverGivesValuesWithoutIntervals() {
        List<ScoreRow> scores = new ArrayList<>();
        List<TrimRow> trims = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            LocalDate day = DAY.plusDays(20L * i);
            scores.add(new ScoreRow("a", day, i % 4, "A", Optional.empty()));
            trims.add(
                    new TrimRow("a", day, Optional.of(Leg.LH), i % 3 == 0 ? "SU" : "NONE", "", OptionalDouble.of(.5)));
        }
        ProofResult result = Proof.of(scores, trims, CheckValues.question(2, Unit.COW, 0, 14, "alarm"));
        assertThat(result.observed().sensitivity().value()).isPresent();
        assertThat(result.observed().sensitivity().interval()).isEmpty();
        assertThat(result.corrected().orElseThrow().sensitivity().interval()).isEmpty();
        assertThat(result.weighted().orElseThrow().sensitivity().interval()).isEmpty();
        assertThat(result.observed().auc().interval()).isEmpty();
    }

    @Test
    void carriesAQuarterMillionScores() {
        List<ScoreRow> scores = new ArrayList<>();
        List<TrimRow> trims = new ArrayList<>();
        for (int i = 0; i < 260_000; i++) {
            String cow = "c" + i % 1000;
            LocalDate day = DAY.plusDays(14L * (i / 1000));
            scores.add(new ScoreRow(cow, day, i * 7 % 4, "A", Optional.empty()));
            if (i % 3 == 0) {
                trims.add(new TrimRow(
                        cow,
                        day.plusDays(i % 9),
                        Optional.of(Leg.LH),
                        i % 5 == 0 ? "SU" : "NONE",
                        "",
                        OptionalDouble.empty()));
            }
        }
        ProofResult result = Proof.of(scores, trims, CheckValues.question(2, Unit.COW, 0, 10, "alarm"));
        assertThat(result.scored()).isEqualTo(260_000);
    }

    private static final LocalDate DAY = LocalDate.of(2026, 3, 2);

    private static void add(List<ScoreRow> scores, List<TrimRow> trims, String cow, double score, String lesion) {
        scores.add(new ScoreRow(cow, DAY, score, "A", Optional.empty()));
        trims.add(new TrimRow(cow, DAY.plusDays(1), Optional.of(Leg.RH), lesion, "", OptionalDouble.empty()));
    }

    private static TwoByTwo counts(Json json) {
        return new TwoByTwo(
                json.at("tp").whole(),
                json.at("fp").whole(),
                json.at("fn").whole(),
                json.at("tn").whole());
    }

    private static ProofResult file(String name) {
        return Proof.of(
                CheckValues.scores(CheckValues.text(name + "-scores.csv")),
                CheckValues.trims(CheckValues.text(name + "-trims.csv")),
                QUESTIONS.getOrDefault(name, CheckValues.question(2, Unit.COW, 0, 14, "alarm")));
    }

    private static void same(Estimate got, Json expected, double tolerance) {
        assertThat(got.value().orElseThrow()).isCloseTo(expected.at("value").number(), within(tolerance));
        assertThat(got.interval().orElseThrow().low())
                .isCloseTo(expected.at("low").number(), within(tolerance));
        assertThat(got.interval().orElseThrow().high())
                .isCloseTo(expected.at("high").number(), within(tolerance));
    }

    private static void near(Estimate got, Json value, Json bootstrap) {
        assertThat(got.value().orElseThrow()).isCloseTo(value.at("value").number(), within(1e-9));
        assertThat(got.interval().orElseThrow().low())
                .isCloseTo(bootstrap.at("low").number(), within(.02));
        assertThat(got.interval().orElseThrow().high())
                .isCloseTo(bootstrap.at("high").number(), within(.02));
    }
}
