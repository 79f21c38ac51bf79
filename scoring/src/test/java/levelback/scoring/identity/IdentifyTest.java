package levelback.scoring.identity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Clock, probabilities and what is settled, on simulated milkings with their truth. */
class IdentifyTest {

    /** lanes.json of the check values: of those called 0.9, nine in ten are right, and so for the other tenths. */
    @Test
    void ofThoseCalledNineTenthsNineInTenAreRight() {
        Reliability easy = IdentityBench.of(Milking.EASY, 1, 40);
        // Swaps between cows read once cannot be seen one by one; that they happen is seen, and said.
        assertThat(easy.right(10)).isBetween(.94, 1.0);
        assertThat(easy.right(9)).isBetween(.85, .97);
        Reliability crowded = IdentityBench.of(Milking.CROWDED.swaps(0), 1, 40);
        for (int tenth = 5; tenth <= 10; tenth++) {
            double error = 3 * Math.sqrt(.25 / crowded.calls(tenth));
            assertThat(crowded.right(tenth)).as(tenth + " tenths").isCloseTo(crowded.said(tenth), within(.05 + error));
        }
    }

    /** Goals of the Lane: 99 % of what is settled is right, of passes that have a read at most 3 % are left. */
    @Test
    void theGoalsOfTheLaneHold() {
        Reliability goal = IdentityBench.of(Milking.GOAL, 1, 10);
        assertThat(goal.committedRight()).isGreaterThanOrEqualTo(.99);
        assertThat(goal.withReadLeft()).isLessThanOrEqualTo(.03);
        assertThat(goal.unreadCommitted()).isGreaterThanOrEqualTo(.9);
        assertThat(goal.worstOffsetS()).isLessThan(.5);
        assertThat(goal.unmatched()).isZero();
    }

    /** lanes.json: offset within 0.5 s, drift within 100 ppm, over many seeds. */
    @Test
    void theClockIsFoundWithoutBias() {
        Reliability easy = IdentityBench.of(Milking.EASY, 500, 60);
        assertThat(easy.worstOffsetS()).isLessThan(.5);
        assertThat(easy.meanDriftErrorPpm()).isCloseTo(0, within(100.0));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -3600, 7200.4, -43_200, 36_000.7, 50_000})
    void aClockAnHourOrAZoneOffIsFound(double offset) {
        Milking.Setting setting = Milking.EASY.swaps(0).clock(offset, -60);
        Milking milking = Milking.of(setting, 3);
        Identification result = Identify.of(milking.passes(), milking.readings());
        assertThat(result.clock().orElseThrow().offsetS()).isCloseTo(offset, within(.5));
        assertThat(right(milking, result)).isGreaterThan(.97);
    }

    @Test
    void theReadsOfAnotherMilkingMatchNothing() {
        int matched = 0;
        for (int seed = 0; seed < 12; seed++) {
            List<PassSpan> passes = Milking.of(Milking.EASY, seed).passes();
            Milking.Setting evening = Milking.EASY.clock(seed % 2 == 0 ? 43_200 : 30, 0);
            List<GateReading> others = Milking.of(evening, 1000 + seed).readings();
            Identification result = Identify.of(passes, others);
            matched += result.clock().isPresent() ? 1 : 0;
            assertThat(result.clock().isPresent()).isNotEqualTo(result.why().isPresent());
        }
        assertThat(matched).isZero();
    }

    @Test
    void passesComeBackInTheOrderGivenAndTheOrderOfTheTablesSaysNothing() {
        Milking milking = Milking.of(Milking.EASY, 5);
        Identification straight = Identify.of(milking.passes(), milking.readings());
        List<PassSpan> passes = new ArrayList<>(milking.passes());
        List<GateReading> readings = new ArrayList<>(milking.readings());
        Collections.shuffle(passes, new Random(1));
        Collections.shuffle(readings, new Random(2));
        Identification mixed = Identify.of(passes, readings);
        for (int i = 0; i < passes.size(); i++) {
            assertThat(mixed.passes().get(i).pass()).isEqualTo(passes.get(i).pass());
            assertThat(straight.passes()).contains(mixed.passes().get(i));
        }
    }

    @Test
    void aHandsDecisionIsKeptAndTheRestFollowsIt() {
        Milking milking = Milking.of(Milking.CROWDED, 4);
        Identification free = Identify.of(milking.passes(), milking.readings());
        int doubtful = 0;
        while (free.passes().get(doubtful).committed()
                || free.passes().get(doubtful).others().stream()
                        .filter(c -> c.tag().isPresent())
                        .findFirst()
                        .isEmpty()) {
            doubtful++;
        }
        String pass = free.passes().get(doubtful).pass();
        String second = free.passes().get(doubtful).others().stream()
                .flatMap(c -> c.tag().stream())
                .findFirst()
                .orElseThrow();
        Identification given =
                Identify.of(milking.passes(), milking.readings(), List.of(new HandDecision(pass, Optional.of(second))));
        assertThat(given.passes().get(doubtful).tag()).contains(second);
        assertThat(given.passes().get(doubtful).committed()).isTrue();
        // Nobody else can be her now: what the others hold of her tag falls.
        double before = held(free, second, pass);
        assertThat(before).isGreaterThan(.01);
        assertThat(held(given, second, pass)).isLessThan(before / 4);
        Identification unread =
                Identify.of(milking.passes(), milking.readings(), List.of(new HandDecision(pass, Optional.empty())));
        assertThat(unread.passes().get(doubtful).tag()).isEmpty();
        assertThat(unread.passes().get(doubtful).probability()).isEqualTo(1);
        // A cow that the reader never saw, typed in while watching.
        Identification typed = Identify.of(
                milking.passes(), milking.readings(), List.of(new HandDecision(pass, Optional.of("typed"))));
        assertThat(typed.passes().get(doubtful).tag()).contains("typed");
    }

    @Test
    void oneTagForTwoCowsIsSaidAndBothPassesAreNamed() {
        Milking milking = Milking.of(Milking.EASY.swaps(0), 8);
        int one = named(milking, 10);
        int two = named(milking, 80);
        String tag = milking.truth().get(one).orElseThrow();
        String other = milking.truth().get(two).orElseThrow();
        List<GateReading> readings = milking.readings().stream()
                .map(r -> r.tag().equals(other) ? new GateReading(r.at(), tag, r.reader()) : r)
                .toList();
        Identification result = Identify.of(milking.passes(), readings);
        assertThat(result.passes().get(one).tag()).contains(tag);
        assertThat(result.passes().get(two).tag()).contains(tag);
        assertThat(result.notes()).anyMatch(n -> n.contains("Tag " + tag + " came 2 times"));
    }

    /** A second reader whose clock is two minutes behind reads most cows again, and some the first one missed. */
    @Test
    void twoClocksAreSetToOneAndSaid() {
        Milking milking = Milking.of(Milking.EASY.swaps(0).miss(.3), 8);
        Identification one = Identify.of(milking.passes(), milking.readings());
        List<GateReading> both = new ArrayList<>(milking.readings());
        Random random = new Random(4);
        List<Optional<String>> truth = new ArrayList<>();
        for (int i = 0; i < milking.passes().size(); i++) {
            PassSpan pass = milking.passes().get(i);
            Optional<String> tag = milking.truth().get(i);
            if (random.nextInt(10) > 0) {
                String read = tag.orElse("late" + i);
                both.add(new GateReading(pass.to().minusMillis(120_000 + random.nextInt(900)), read, "exit-2"));
                tag = Optional.of(read);
            }
            truth.add(tag);
        }
        Identification two = Identify.of(milking.passes(), both);
        assertThat(two.notes()).anyMatch(n -> n.startsWith("Two clocks: reader exit-"));
        Milking withBoth = new Milking(milking.passes(), both, truth);
        assertThat(right(withBoth, two)).isGreaterThan(.97);
        assertThat(one.passes().stream().filter(p -> p.tag().isEmpty()).count())
                .isGreaterThan(
                        3 * two.passes().stream().filter(p -> p.tag().isEmpty()).count());
        // One clock in two readers is not worth a word.
        List<GateReading> halves = new ArrayList<>();
        for (GateReading r : milking.readings()) {
            halves.add(new GateReading(r.at(), r.tag(), r.tag().hashCode() % 2 == 0 ? "left" : "right"));
        }
        assertThat(Identify.of(milking.passes(), halves).notes()).isEmpty();
    }

    /** By hand: A was read at 0 and 0.4 s, B at 6 and 6.3; the list has A's second and B's first tag exchanged. */
    @Test
    void whatBurstsShowToBeExchangedIsPutBack() {
        List<TagVisit.Read> right = List.of(
                new TagVisit.Read("A", 0),
                new TagVisit.Read("A", .4),
                new TagVisit.Read("B", 6),
                new TagVisit.Read("B", 6.3));
        List<TagVisit.Read> exchanged = List.of(
                new TagVisit.Read("A", 0),
                new TagVisit.Read("B", .4),
                new TagVisit.Read("A", 6),
                new TagVisit.Read("B", 6.3));
        assertThat(TagExchange.putBack(exchanged)).isEqualTo(new TagExchange.PutBack(right, 1));
        assertThat(TagExchange.putBack(right)).isEqualTo(new TagExchange.PutBack(right, 0));
        List<TagVisit.Read> lingers = new ArrayList<>(exchanged);
        for (int cow = 0; cow < 3; cow++) {
            lingers.add(new TagVisit.Read("C" + cow, 100 * (cow + 1)));
            lingers.add(new TagVisit.Read("C" + cow, 100 * (cow + 1) + 20));
        }
        assertThat(TagExchange.putBack(lingers)).isEqualTo(new TagExchange.PutBack(lingers, 0));
    }

    /** Walkers at a steady beat fit a clock one beat off nearly as well: the one that leaves nobody out is taken. */
    @Test
    void aSteadyBeatIsNotTakenForAnotherMilking() {
        java.time.Instant start = java.time.Instant.parse("2026-03-14T05:30:00Z");
        List<PassSpan> passes = new ArrayList<>();
        List<GateReading> readings = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            passes.add(new PassSpan("p" + i, start.plusSeconds(10L * i), start.plusSeconds(10L * i + 2)));
            readings.add(new GateReading(start.plusMillis(10_000L * i + 4000), "T" + i, ""));
        }
        Identification result = Identify.of(passes, readings);
        assertThat(result.clock().orElseThrow().offsetS()).isCloseTo(3, within(.1));
        for (int i = 0; i < 40; i++) {
            assertThat(result.passes().get(i).tag()).contains("T" + i);
        }
    }

    @Test
    void aSettledPassIsLikelyEnoughAndFewAreExpectedWrong() {
        double[] probability = {1, .999, .95, .9, .89, .5};
        assertThat(CommitRule.settled(probability)).containsExactly(true, true, false, false, false, false);
        double[] many = new double[1000];
        java.util.Arrays.fill(many, .9999);
        many[3] = .91;
        many[4] = .89;
        boolean[] settled = CommitRule.settled(many);
        assertThat(settled[3]).isTrue();
        assertThat(settled[4]).isFalse();
        assertThat(CommitRule.settled(new double[0])).isEmpty();
    }

    private static int named(Milking milking, int from) {
        int i = from;
        while (milking.truth().get(i).isEmpty()) {
            i++;
        }
        return i;
    }

    private static double held(Identification result, String tag, String butFor) {
        double sum = 0;
        for (Identification.PassIdentity who : result.passes()) {
            if (!who.pass().equals(butFor)) {
                sum += who.tag().filter(tag::equals).isPresent() ? who.probability() : 0;
                sum += who.others().stream()
                        .filter(c -> c.tag().filter(tag::equals).isPresent())
                        .mapToDouble(Identification.Chance::probability)
                        .sum();
            }
        }
        return sum;
    }

    private static double right(Milking milking, Identification result) {
        int right = 0;
        for (int i = 0; i < milking.truth().size(); i++) {
            right += milking.truth().get(i).equals(result.passes().get(i).tag()) ? 1 : 0;
        }
        return right / (double) milking.truth().size();
    }

    @Test
    void theReadsOfAnotherDayAreSaidToBe() {
        Milking milking = Milking.of(Milking.EASY, 2);
        List<GateReading> late = milking.readings().stream()
                .map(r -> new GateReading(r.at().plus(Duration.ofDays(3)), r.tag(), r.reader()))
                .toList();
        Identification result = Identify.of(milking.passes(), late);
        assertThat(result.clock()).isEmpty();
        assertThat(result.why().orElseThrow()).contains("another day");
        assertThat(result.passes()).allMatch(p -> p.tag().isEmpty() && !p.committed());
        assertThat(result.unmatchedTags()).isNotEmpty();
    }
}
