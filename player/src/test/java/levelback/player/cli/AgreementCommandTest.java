package levelback.player.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The command from a file to keys, against the check values (README.md beside them names the packages). */
class AgreementCommandTest {

    /** Of the reference alone: standard errors, the percentile bootstrap, the model's other fits. */
    private static final String NOT_KEYS =
            "(.*\\.)?(se|seLinearised|bootLow|bootHigh|po|pe|source|about)|(clmm|published|icc\\.meanSquares).*";

    @ParameterizedTest
    @ValueSource(
            strings = {
                "panel-complete",
                "panel-missing",
                "panel-halves",
                "krippendorff-12x4",
                "shrout-fleiss-6x4",
                "cohen-2x2",
                "one-level",
                "one-scorer",
                "perfect",
                "one-scorer-constant",
                "no-overlap"
            })
    void everyFigureOfTheCheckValuesComesOut(String name) throws Exception {
        Map<String, String> got = agreement(file(name + ".csv").toString());
        Map<String, String> expected = FlatJson.of(Files.readString(file(name + ".json")));
        int compared = 0;
        for (Map.Entry<String, String> entry : expected.entrySet()) {
            String key = entry.getKey();
            if (key.matches(NOT_KEYS) || elsewhere(name, key)) {
                continue;
            }
            compared++;
            if (key.equals("icc")) {
                assertThat(got).containsEntry("icc.oneWay.value", "null").containsEntry("icc.agreement.value", "null");
                assertThat(got).containsKey("icc.oneWay.why");
                continue;
            }
            assertThat(got).as(name).containsKey(key);
            String value = Objects.requireNonNull(got.get(key));
            if (entry.getValue().matches("-?[0-9].*")) {
                // clmm is held to 5e-4, as the check values say of it.
                double tolerance = key.contains(".latent.") ? 5e-4 : 1e-6;
                assertThat(Double.parseDouble(value))
                        .as(name + " " + key)
                        .isCloseTo(Double.parseDouble(entry.getValue()), within(tolerance));
            } else {
                assertThat(value).as(name + " " + key).isEqualTo(entry.getValue());
            }
        }
        assertThat(compared).isGreaterThan(15);
    }

    /** What the reference gives in another way than the definitions ask; each has a test of its own. */
    private static boolean elsewhere(String name, String key) {
        // The reference clusters by clip; by definition it is by cow where cows are named.
        boolean byClip = name.equals("panel-missing") && key.matches("(exactAgreement|withinOne)\\.(low|high)");
        // Six clips and nine levels: the reference solves a singular system; the program says that it is singular.
        boolean singular = name.equals("shrout-fleiss-6x4") && key.startsWith("pairs/4.stuartMaxwell");
        // The reference has no test at all where its system is singular, the program a null with its reason.
        boolean nothing = key.matches("pairs/\\d+\\.stuartMaxwell");
        return byClip || singular || nothing;
    }

    @Test
    void withoutTheCowsPairsAreClusteredByClipAsInTheReference(@TempDir Path folder) throws Exception {
        Path bare = folder.resolve("bare.csv");
        Files.write(
                bare,
                Files.readAllLines(file("panel-missing.csv")).stream()
                        .map(row -> row.substring(0, row.lastIndexOf(',')))
                        .toList());
        Map<String, String> got = agreement(bare.toString());
        Map<String, String> expected = FlatJson.of(Files.readString(file("panel-missing.json")));
        for (String key : List.of("exactAgreement.low", "exactAgreement.high", "withinOne.low", "withinOne.high")) {
            assertThat(number(got, key)).as(key).isCloseTo(number(expected, key), within(1e-6));
        }
        Map<String, String> byCow = agreement(file("panel-missing.csv").toString());
        assertThat(byCow.get("exactAgreement.method")).contains("clustered by cow");
        assertThat(byCow.get("exactAgreement.low")).isNotEqualTo(got.get("exactAgreement.low"));
    }

    /** Fleiss 1971, ten clips by fourteen nameless scorers: the printed digits, data and values from memory. */
    @Test
    void theExampleOfFleissComesOut() throws Exception {
        Map<String, String> got = agreement(file("fleiss-10x14.csv").toString());
        Map<String, String> expected = FlatJson.of(Files.readString(file("fleiss-10x14.json")));
        for (String key : List.of("fleissKappa.value", "ac1.value", "alphaNominal.value", "alphaOrdinal.value")) {
            assertThat(number(got, key)).as(key).isCloseTo(number(expected, key), within(1e-6));
        }
        assertThat(number(got, "fleissKappa.value")).isCloseTo(0.21, within(0.005));
    }

    /** The percentile limits of the reference and these by BCa are of one order: far from a constant, near each other. */
    @ParameterizedTest
    @CsvSource({"panel-complete,.04", "panel-halves,.04"})
    void resampledLimitsLieNearThoseOfTheReference(String name, double near) throws Exception {
        Map<String, String> got = agreement(file(name + ".csv").toString());
        Map<String, String> expected = FlatJson.of(Files.readString(file(name + ".json")));
        for (String figure : List.of("alphaNominal", "alphaOrdinal", "alphaInterval")) {
            assertThat(number(got, figure + ".low"))
                    .as(figure)
                    .isCloseTo(number(expected, figure + ".bootLow"), within(near));
            assertThat(number(got, figure + ".high"))
                    .as(figure)
                    .isCloseTo(number(expected, figure + ".bootHigh"), within(near));
        }
    }

    @Test
    void theSameSeedGivesTheSameBytesWhateverTheOrderOfRows(@TempDir Path folder) throws Exception {
        List<String> rows = new ArrayList<>(Files.readAllLines(file("panel-missing.csv")));
        String header = rows.remove(0);
        Collections.shuffle(rows, new Random(3));
        rows.add(0, header);
        Path shuffled = Files.write(folder.resolve("shuffled.csv"), rows);
        String once =
                run("agreement", "--json", file("panel-missing.csv").toString()).out();
        assertThat(run("agreement", "--json", shuffled.toString()).out()).isEqualTo(once);
        assertThat(run("agreement", "--json", "--seed", "2", shuffled.toString())
                        .out())
                .isNotEqualTo(once);
    }

    @Test
    void theStatedScaleCountsLevelsThatNobodyGave(@TempDir Path folder) throws Exception {
        Path file = Files.writeString(
                folder.resolve("r.csv"), "scorer,clip,score\nA,x,0\nB,x,0\nA,y,1\nB,y,1\nA,z,0\nB,z,1\n");
        Map<String, String> two = agreement(file.toString());
        Map<String, String> four = agreement("--scale-levels 0,1,2,3 " + file);
        assertThat(two).containsEntry("levels/1", "1").doesNotContainKey("levels/2");
        assertThat(four).containsEntry("levels/3", "3");
        // Nominal kappa looks at no level that did not occur; AC1 counts them.
        assertThat(four.get("pairs/0.kappa.value")).isEqualTo(two.get("pairs/0.kappa.value"));
        assertThat(number(four, "ac1.value")).isGreaterThan(number(two, "ac1.value"));
        assertThat(four.get("levelAgreement/2.value")).isEqualTo("null");
        assertThat(four).containsKey("levelAgreement/2.why");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "A,x,1;A,x,2|line 3: A has scored clip x in session 1 on line 2 already",
                "A,x,;B,x,|no row has a score",
                "A,x,lame|line 2: column score \"lame\" is no number",
                "A,x,NaN|line 2: column score \"NaN\" is no number",
                ",x,1|line 2: column scorer is empty",
                "A,x|line 2",
            })
    void badInputIsOneSentenceAndStatus2(String rows, String sentence, @TempDir Path folder) throws IOException {
        Path file = Files.writeString(folder.resolve("r.csv"), "scorer,clip,score\n" + rows.replace(';', '\n') + "\n");
        Answer answer = run("agreement", file.toString(), "--json");
        assertThat(answer.status()).isEqualTo(2);
        assertThat(answer.out()).isEmpty();
        assertThat(answer.err()).contains(sentence).hasLineCount(1);
    }

    @Test
    void aPersonReadsTheSameFigures() throws Exception {
        String text = run("agreement", file("panel-complete.csv").toString()).out();
        Map<String, String> got = agreement(file("panel-complete.csv").toString());
        assertThat(text).contains("Fleiss' kappa      " + String.format("%.3f", number(got, "fleissKappa.value")));
        assertThat(text).contains("5 scorers, 60 clips, 600 scores").doesNotContain("NaN");
    }

    private static double number(Map<String, String> from, String key) {
        return Double.parseDouble(Objects.requireNonNull(from.get(key), key));
    }

    private static Map<String, String> agreement(String options) throws IOException {
        Answer answer = run(("agreement --json " + options).split(" "));
        assertThat(answer.err()).isEmpty();
        assertThat(answer.status()).isZero();
        assertThat(answer.out()).doesNotContain("NaN").doesNotContain("Infinity");
        return FlatJson.of(answer.out());
    }

    private record Answer(int status, String out, String err) {}

    private static Answer run(String... args) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int status = CommandLineRoot.run(new PrintWriter(out), new PrintWriter(err), args);
        return new Answer(status, out.toString(), err.toString());
    }

    private static Path file(String name) throws URISyntaxException {
        return Path.of(Objects.requireNonNull(AgreementCommandTest.class.getResource("agreement/" + name))
                .toURI());
    }
}
