package levelback.scoring.identity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The posteriors against the list of every matching: check-values/identify/tiny.json, and listed here. */
class AlignmentTest {

    @ParameterizedTest
    @MethodSource("tiny")
    void theCheckValuesComeOut(Map<?, ?> given) {
        double[] passes = numbers(given.get("passTimesS"));
        double[] reads = numbers(given.get("readTimesS"));
        List<?> tags = list(given.get("readTags"));
        Map<?, ?> parameters = map(given.get("parameters"));
        Map<?, ?> expected = map(given.get("expected"));
        double[] offsets = parameters.containsKey("offsetGrid")
                ? numbers(parameters.get("offsetGrid"))
                : new double[] {number(parameters.get("offset"))};
        List<Alignment> alignments = new ArrayList<>();
        for (double offset : offsets) {
            alignments.add(Alignment.of(
                    passes,
                    reads,
                    new AlignmentParameters(
                            offset,
                            number(parameters.get("drift")),
                            number(parameters.get("sigma")),
                            number(parameters.get("miss")),
                            number(parameters.get("lambda")),
                            number(parameters.get("epsilon")))));
        }
        ClockMixture mixture = ClockMixture.of(alignments);
        int compared = 0;
        for (int i = 0; i < passes.length; i++) {
            Map<?, ?> pass = map(list(expected.get("passes")).get(i));
            assertThat(mixture.unread(i)).isCloseTo(number(pass.get("null")), within(1e-9));
            double listed = mixture.unread(i);
            for (int j = 0; j < reads.length; j++) {
                Object of = map(pass.get("tags")).get(tags.get(j));
                assertThat(mixture.probability(i, j)).isCloseTo(of == null ? 0 : number(of), within(1e-9));
                listed += mixture.probability(i, j);
                compared++;
            }
            assertThat(listed).isCloseTo(1, within(1e-12));
        }
        assertThat(compared).isEqualTo(passes.length * reads.length);
        likeliestAsListed(map(expected.get("best")), mixture, alignments, tags, offsets);
        if (expected.get("offsetPosterior") != null) {
            for (int o = 0; o < offsets.length; o++) {
                assertThat(mixture.weight(o))
                        .isCloseTo(
                                number(map(expected.get("offsetPosterior")).get(String.valueOf(offsets[o]))),
                                within(1e-9));
            }
        }
    }

    private static void likeliestAsListed(
            Map<?, ?> best, ClockMixture mixture, List<Alignment> alignments, List<?> tags, double[] offsets) {
        int top = 0;
        double probability = 0;
        for (int o = 0; o < offsets.length; o++) {
            double p = mixture.weight(o) * Math.exp(alignments.get(o).logProbabilityOfLikeliestMatching());
            if (p > probability) {
                probability = p;
                top = o;
            }
        }
        assertThat(offsets[top]).isEqualTo(number(best.get("offset")));
        assertThat(probability).isCloseTo(number(best.get("probability")), within(1e-9));
        List<@Nullable Object> chosen = new ArrayList<>();
        for (int i = 0; i < alignments.get(top).passes(); i++) {
            int read = alignments.get(top).likeliestMatching(i);
            chosen.add(read == Alignment.UNREAD ? null : tags.get(read));
        }
        assertThat(chosen).isEqualTo(best.get("tags"));
    }

    /** Every matching listed; the windows shrunk so that the moving set of bits is used, not one set of all reads. */
    @Property(tries = 300)
    void randomSmallCasesAgreeWithTheListOfEveryMatching(
            @ForAll long seed, @ForAll @IntRange(max = 5) int passCount, @ForAll @IntRange(max = 6) int readCount) {
        Random random = new Random(seed);
        double[] passes = random.doubles(passCount, 0, 30).sorted().toArray();
        double[] reads = random.doubles(readCount, 0, 30)
                .map(r -> random.nextInt(4) == 0 ? Math.rint(r) : r)
                .sorted()
                .toArray();
        AlignmentParameters with = new AlignmentParameters(
                random.nextGaussian(),
                0.01 * random.nextGaussian(),
                0.5 + 2 * random.nextDouble(),
                0.02 + 0.3 * random.nextDouble(),
                0.001 + 0.05 * random.nextDouble(),
                random.nextInt(3) == 0 ? random.nextInt(2) : random.nextDouble());
        Listing listing = new Listing(passes, reads, with);
        int[] free = new int[passCount];
        java.util.Arrays.fill(free, Alignment.FREE);
        // Reach 9 sigma and windows of 12 bits, but never the short cut for few reads.
        Alignment all = Alignment.of(passes, reads, with);
        double[] expected = new double[passCount];
        for (int i = 0; i < passCount; i++) {
            expected[i] = passes[0] + with.expectedReadS(passes[i] - passes[0]);
        }
        Windows moving = movingWindows(expected, reads, 9 * with.sigmaS());
        Alignment windowed = new ForwardBackward(expected, reads, with, free, moving).run();
        for (int i = 0; i < passCount; i++) {
            assertThat(all.unread(i)).isCloseTo(listing.unread[i], within(1e-9));
            assertThat(windowed.unread(i)).isCloseTo(listing.unread[i], within(1e-9));
            for (int j = 0; j < readCount; j++) {
                assertThat(all.probability(i, j)).isCloseTo(listing.ofRead[i][j], within(1e-9));
                assertThat(windowed.probability(i, j)).isCloseTo(listing.ofRead[i][j], within(1e-9));
            }
        }
        assertThat(all.logEvidence()).isCloseTo(Math.log(listing.total), within(1e-9));
        assertThat(all.logProbabilityOfLikeliestMatching())
                .isCloseTo(Math.log(listing.heaviest / listing.total), within(1e-9));
    }

    private static Windows movingWindows(double[] expected, double[] reads, double reach) {
        int[] from = new int[expected.length];
        int[] to = new int[expected.length];
        for (int i = 0; i < expected.length; i++) {
            double middle = expected[i];
            from[i] = (int) java.util.Arrays.stream(reads)
                    .filter(r -> r < middle - reach)
                    .count();
            to[i] = (int) java.util.Arrays.stream(reads)
                    .filter(r -> r <= middle + reach)
                    .count();
        }
        return new Windows(from, to, false);
    }

    @Test
    void aHandsDecisionReAlignsTheRest() {
        double[] passes = {10, 11};
        double[] reads = {12.3, 12.9};
        AlignmentParameters with = new AlignmentParameters(2, 0, 0.8, 0.1, 0.01, 1);
        // The matchings that are left are weighed anew: first pass = second read leaves the other one or none.
        Alignment swapped = Alignment.of(passes, reads, with, new int[] {1, Alignment.FREE});
        assertThat(swapped.probability(0, 1)).isEqualTo(1);
        double other = 0.9 * Math.exp(-0.5 * Math.pow(0.7 / 0.8, 2)) / (0.8 * Math.sqrt(2 * Math.PI));
        assertThat(swapped.probability(1, 0)).isCloseTo(other / (other + 0.1 * 0.01), within(1e-12));
        Alignment unread = Alignment.of(passes, reads, with, new int[] {Alignment.UNREAD, Alignment.FREE});
        assertThat(unread.unread(0)).isEqualTo(1);
        assertThat(unread.probability(1, 1)).isGreaterThan(0.5);
    }

    @Test
    void manyReadsAtOnceAreCutToTheNearestAndSaidSo() {
        double[] reads = new double[40];
        for (int j = 0; j < reads.length; j++) {
            reads[j] = 10 + 0.01 * j;
        }
        Alignment alignment =
                Alignment.of(new double[] {10, 10.2, 60}, reads, new AlignmentParameters(0, 0, 1, 0.1, 0.01, 1));
        assertThat(alignment.windowCut()).isTrue();
        assertThat(alignment.endRead(1) - alignment.firstRead(1)).isEqualTo(Alignment.MOST_READS);
        assertThat(alignment.probability(1, 20)).isGreaterThan(alignment.probability(0, 20));
        assertThat(alignment.unread(2)).isEqualTo(1);
    }

    @Test
    void timesThatDoNotAscendAreRefused() {
        AlignmentParameters with = new AlignmentParameters(0, 0, 1, 0.1, 0.01, 1);
        assertThatThrownBy(() -> Alignment.of(new double[] {2, 1}, new double[] {}, with))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("pass times");
        assertThatThrownBy(() -> Alignment.of(new double[] {1}, new double[] {Double.NaN}, with))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("read times");
    }

    static Stream<Map<?, ?>> tiny() throws IOException {
        try (InputStream in = Objects.requireNonNull(AlignmentTest.class.getResourceAsStream("tiny.json"));
                JsonParser parser = new JsonFactory().createParser(in)) {
            parser.nextToken();
            return list(map(value(parser)).get("cases")).stream().map(AlignmentTest::map);
        }
    }

    private static @Nullable Object value(JsonParser parser) throws IOException {
        return switch (parser.currentToken()) {
            case START_OBJECT -> {
                Map<String, @Nullable Object> map = new LinkedHashMap<>();
                while (parser.nextToken() != JsonToken.END_OBJECT) {
                    String key = parser.currentName();
                    parser.nextToken();
                    map.put(key, value(parser));
                }
                yield map;
            }
            case START_ARRAY -> {
                List<@Nullable Object> list = new ArrayList<>();
                while (parser.nextToken() != JsonToken.END_ARRAY) {
                    list.add(value(parser));
                }
                yield list;
            }
            case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> parser.getNumberValue();
            case VALUE_STRING -> parser.getText();
            default -> null;
        };
    }

    private static Map<?, ?> map(@Nullable Object value) {
        return (Map<?, ?>) Objects.requireNonNull(value);
    }

    private static List<?> list(@Nullable Object value) {
        return (List<?>) Objects.requireNonNull(value);
    }

    private static double number(@Nullable Object value) {
        return ((Number) Objects.requireNonNull(value)).doubleValue();
    }

    private static double[] numbers(@Nullable Object value) {
        return list(value).stream().mapToDouble(AlignmentTest::number).toArray();
    }
}
