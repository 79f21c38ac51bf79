package levelback.scoring.proof;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import levelback.scoring.proof.CheckValues.Json;
import levelback.scoring.proof.ProofQuestion.Unit;
import levelback.scoring.value.Interval;
import levelback.scoring.value.Leg;
import org.junit.jupiter.api.Test;

/** Two scorers on the same cows, against R (check values; versions in README.md beside them). */
class ComparisonTest {

    private static final LocalDate DAY = LocalDate.of(2026, 3, 2);
    private static final ProofQuestion QUESTION = CheckValues.question(2, Unit.COW, 0, 14, "alarm");

    private final List<ScoreRow> scores = new ArrayList<>();
    private final List<TrimRow> trims = new ArrayList<>();

    /** pROC 1.18.0, paired DeLong, to 1e-8. */
    @Test
    void differenceOfAreasEqualsTheReference() {
        Json c = CheckValues.json("auc-rank-cluster.json").at("pairedDeLong");
        double[] sick = c.at("sick").numbers();
        double[] first = c.at("scorer1").numbers();
        double[] second = c.at("scorer2").numbers();
        for (int i = 0; i < sick.length; i++) {
            add("c" + i, first[i], second[i], sick[i] > 0);
        }
        ProofComparison got = compare();
        Json expected = c.at("expected");
        assertThat(got.auc().a().value().orElseThrow())
                .isCloseTo(expected.at("auc1").number(), within(1e-8));
        assertThat(got.auc().b().value().orElseThrow())
                .isCloseTo(expected.at("auc2").number(), within(1e-8));
        assertThat(got.auc().difference().value().orElseThrow())
                .isCloseTo(expected.at("difference").number(), within(1e-8));
        assertThat(got.auc().z().orElseThrow()).isCloseTo(expected.at("z").number(), within(1e-7));
        assertThat(got.auc().pValue().orElseThrow())
                .isCloseTo(expected.at("pValue").number(), within(1e-8));
        double half = 1.959963984540054 * expected.at("se").number();
        assertThat(got.auc().difference().interval().orElseThrow().high())
                .isCloseTo(expected.at("difference").number() + half, within(1e-8));
        assertThat(got.pairs()).isEqualTo(sick.length);
        assertThat(got.clustered()).isFalse();
    }

    /** mcnemar.test(correct = FALSE) and binom.test of R 4.2.2, to 1e-8. */
    @Test
    void mcNemarEqualsTheReference() {
        for (Json c : CheckValues.json("two-by-two.json").at("mcnemar").items()) {
            double[] table = c.at("table").numbers();
            scores.clear();
            trims.clear();
            pairs((int) table[0], 2, 2);
            pairs((int) table[1], 2, 0);
            pairs((int) table[2], 0, 2);
            pairs((int) table[3], 0, 0);
            ProofComparison.Shares got = compare().sensitivity();
            assertThat(List.of(got.both(), got.aOnly(), got.bOnly(), got.neither()))
                    .containsExactly((long) table[0], (long) table[1], (long) table[2], (long) table[3]);
            assertThat(got.test().statistic().orElseThrow())
                    .isCloseTo(c.at("chiSquareNoCorrection").number(), within(1e-8));
            assertThat(got.test().exactP().orElseThrow())
                    .isCloseTo(c.at("exactP").number(), within(1e-8));
        }
    }

    /** Mid-p is the exact p less the chance of the split seen: 12 and 5 of 17, .1434631 - dbinom(5, 17, .5) = .0962524. */
    @Test
    void midPAndTheAdjustedIntervalComeOutAsByHand() {
        pairs(30, 2, 2);
        pairs(12, 2, 0);
        pairs(5, 0, 2);
        pairs(53, 0, 0);
        ProofComparison.Shares got = compare().sensitivity();
        assertThat(got.test().midP().orElseThrow()).isCloseTo(.143463134766 - .047210693359375, within(1e-9));
        // Worked out in Python: (12+1)/102 - (5+1)/102 +- 1.959964 sqrt((13/102 + 6/102 - (7/102)^2)/102)
        Interval interval = got.difference().interval().orElseThrow();
        assertThat(got.difference().value()).hasValue(.07);
        assertThat(interval.low()).isCloseTo(-0.0140646, within(1e-6));
        assertThat(interval.high()).isCloseTo(0.1513195, within(1e-6));
    }

    /** With each pair doubled inside its cow nothing is learnt: statistic and interval by cow stay those of single pairs. */
    @Test
    void doubledPairsOfACowWeighOnce() {
        Random random = new Random(3);
        for (int i = 0; i < 60; i++) {
            add("c" + i, random.nextInt(4), random.nextInt(4), i % 3 == 0);
        }
        ProofComparison once = compare();
        for (ScoreRow row : List.copyOf(scores)) {
            scores.add(new ScoreRow(row.cow(), row.date().plusDays(100), row.score(), row.scorer(), row.leg()));
        }
        for (TrimRow row : List.copyOf(trims)) {
            trims.add(new TrimRow(
                    row.cow(), row.date().plusDays(100), row.leg(), row.lesion(), row.stage(), row.chance()));
        }
        ProofComparison twice = compare();
        assertThat(twice.clustered()).isTrue();
        assertThat(twice.sensitivity().test().statistic().orElseThrow())
                .isCloseTo(once.sensitivity().test().statistic().orElseThrow(), within(1e-12));
        assertThat(twice.sensitivity().test().exactP().orElseThrow())
                .isCloseTo(once.sensitivity().test().exactP().orElseThrow(), within(1e-12));
        assertThat(twice.auc().z().orElseThrow()).isCloseTo(once.auc().z().orElseThrow(), within(1e-9));
        assertThat(twice.specificity().difference().method()).contains("cluster");
    }

    @Test
    void whoIsFirstOnlyTurnsTheSign() {
        Random random = new Random(5);
        for (int i = 0; i < 80; i++) {
            add("c" + i % 50, random.nextInt(4), random.nextInt(4), i % 3 == 0);
        }
        ProofComparison one = compare();
        ProofComparison other = Comparison.of(scores, trims, QUESTION, "B", "A");
        assertThat(other.sensitivity().difference().value().orElseThrow())
                .isEqualTo(-one.sensitivity().difference().value().orElseThrow());
        assertThat(other.sensitivity().test()).isEqualTo(one.sensitivity().test());
        assertThat(other.auc().difference().interval().orElseThrow().low())
                .isCloseTo(-one.auc().difference().interval().orElseThrow().high(), within(1e-12));
    }

    @Test
    void whatIsMissingIsSaidInWords() {
        scores.add(new ScoreRow("a", DAY, 2, "A", Optional.empty()));
        scores.add(new ScoreRow("b", DAY, 2, "B", Optional.empty()));
        ProofComparison apart = compare();
        assertThat(apart.pairs()).isZero();
        assertThat(apart.auc().why()).isEqualTo("no cow was scored by both on one day");
        assertThat(apart.sensitivity().difference().why()).hasValue("no cow was scored by both on one day");
        scores.add(new ScoreRow("a", DAY, 1, "B", Optional.empty()));
        assertThat(compare().specificity().a().why()).hasValue("no cow scored by both was lifted");
        scores.clear();
        pairs(20, 2, 2);
        ProofComparison alike = compare();
        assertThat(alike.sensitivity().test().why()).contains("no discordant pair");
        assertThat(alike.sensitivity().difference().interval()).isPresent();
        assertThatThrownBy(() -> Comparison.of(scores, trims, QUESTION, "A", "A"))
                .isInstanceOf(IllegalArgumentException.class);
    }

    private ProofComparison compare() {
        return Comparison.of(scores, trims, QUESTION, "A", "B");
    }

    private void pairs(int n, double a, double b) {
        for (int i = 0; i < n; i++) {
            add(a + "-" + b + "-" + i, a, b, true);
        }
    }

    private void add(String cow, double a, double b, boolean sick) {
        LocalDate day = DAY.plusDays(40L * (scores.size() / 100));
        scores.add(new ScoreRow(cow, day, a, "A", Optional.empty()));
        scores.add(new ScoreRow(cow, day, b, "B", Optional.empty()));
        trims.add(new TrimRow(
                cow, day.plusDays(1), Optional.of(Leg.LH), sick ? "SU" : "NONE", "", OptionalDouble.empty()));
    }
}
