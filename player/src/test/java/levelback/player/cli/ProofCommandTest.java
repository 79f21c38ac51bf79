package levelback.player.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The command from files to keys, against R and Python (check values; README.md beside them names versions). */
class ProofCommandTest {

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        once          | --cut 2 --unit cow --window-days 0-14 --lesions alarm
        repeated      | --cut 2 --unit cow --window-days 0-10 --lesions any
        legs          | --cut 2 --unit leg --window-days 0-14 --lesions SU,WLA,BU
        hepatic       | --cut 1 --lesions any
        control-lifts | --cut 2
        """)
    void everyKeyOfTheCheckValuesComesOut(String name, String options) throws Exception {
        Answer answer = run(("proof --json --scores " + file(name + "-scores.csv") + " --trims "
                        + file(name + "-trims.csv") + " " + options)
                .split(" "));
        assertThat(answer.err()).isEmpty();
        assertThat(answer.status()).isZero();
        Map<String, String> got = FlatJson.of(answer.out());
        Map<String, String> expected = FlatJson.of(Files.readString(file(name + ".json")));
        int compared = 0;
        for (Map.Entry<String, String> entry : expected.entrySet()) {
            String key = entry.getKey();
            boolean figure = key.matches("(counts|byScore|byLesion|cuts|observed|corrected|weighted|trend)[./].*")
                    && !key.matches(".*\\.(se|seLogit|z)|weighted.horvitzThompsonLesions");
            // Where cows repeat these two are clustered here and independent there; ProofTest holds them to the
            // bootstrap.
            boolean clustered =
                    name.matches("repeated|legs") && key.matches("(corrected\\..*|observed\\.auc)\\.(low|high)");
            if (!figure || clustered) {
                continue;
            }
            compared++;
            assertThat(got).containsKey(key);
            String value = Objects.requireNonNull(got.get(key));
            if (entry.getValue().matches("-?[0-9].*")) {
                assertThat(Double.parseDouble(value))
                        .as(key)
                        .isCloseTo(Double.parseDouble(entry.getValue()), within(1e-6));
            } else {
                assertThat(value).as(key).isEqualTo(entry.getValue());
            }
        }
        assertThat(compared).isGreaterThan(35);
        assertThat(got).containsKeys("unit", "lesions", "windowDays/0", "flow/0.step", "observed.ppv.method");
    }

    @Test
    void theSameSeedGivesTheSameBytesAndTheTableNamesTheFigures() throws Exception {
        String[] args = ("proof --scores " + file("repeated-scores.csv") + " --trims " + file("repeated-trims.csv")
                        + " --cut 2 --lesions any --seed 7 --json")
                .split(" ");
        assertThat(run(args).out()).isEqualTo(run(args).out());
        Answer table = run(List.of(args).subList(0, 9).toArray(String[]::new));
        assertThat(table.out()).contains("sensitivity", "corrected for the never lifted", "neverLifted");
    }

    /** pROC 1.18.0, mcnemar.test and binom.test of R 4.2.2 (check values) through the command. */
    @Test
    void twoScorersAreComparedOnTheSameCows(@TempDir Path folder) throws Exception {
        StringBuilder scores = new StringBuilder("cow,date,score,scorer\n");
        StringBuilder trims = new StringBuilder("cow,date,leg,lesion\n");
        int[][] table = {{30, 2, 2}, {12, 2, 0}, {5, 0, 2}, {53, 0, 0}};
        for (int[] of : table) {
            for (int i = 0; i < of[0]; i++) {
                String cow = of[1] + "" + of[2] + i;
                scores.append(cow).append(",2026-03-02,").append(of[1]).append(",Anna\n");
                scores.append(cow).append(",2026-03-02,").append(of[2]).append(",Ben\n");
                trims.append(cow).append(",2026-03-03,LH,SU\n");
            }
        }
        String options = "proof --cut 2 --scores " + Files.writeString(folder.resolve("s.csv"), scores) + " --trims "
                + Files.writeString(folder.resolve("t.csv"), trims);
        Map<String, String> got = FlatJson.of(
                run((options + " --json --compare Anna,Ben").split(" ")).out());
        assertThat(Double.parseDouble(got.getOrDefault("comparison.sensitivity.mcnemar.exactP", "")))
                .isCloseTo(0.143463134766, within(1e-8));
        assertThat(got)
                .containsEntry("comparison.pairs", "100")
                .containsEntry("comparison.sensitivity.aOnly", "12")
                .containsEntry("comparison.sensitivity.difference.value", "0.07")
                .containsEntry("comparison.specificity.difference.value", "null")
                .containsEntry("comparison.auc.difference.value", "null")
                .containsKeys("comparison.auc.why", "comparison.specificity.difference.why", "netBenefit/0.threshold");
        assertThat(run((options + " --compare Anna,Ben").split(" ")).out()).contains("Anna against Ben", "mid-p");
        for (String bad : List.of("Anna", "Anna,Anna", "Anna,Nobody", "Anna,")) {
            Answer answer = run((options + " --json --compare " + bad).split(" "));
            assertThat(answer.status()).as(bad).isEqualTo(2);
            assertThat(answer.out()).isEmpty();
            assertThat(answer.err().strip().lines()).hasSize(1);
        }
    }

    @Test
    void badInputIsOneSentenceStatusTwoAndNothingOnStandardOutput(@TempDir Path folder) throws Exception {
        Path scores = Files.writeString(folder.resolve("s.csv"), "cow,day,score\n1,2026-03-02,2\n");
        Path good = Files.writeString(folder.resolve("g.csv"), "cow,date,score\n1,2026-03-02,2\n");
        Path trims = Files.writeString(folder.resolve("t.csv"), "cow,date,leg,lesion\n1,2026-03-03,LH,SU\n");
        for (String options : List.of(
                "--cut 2 --scores " + scores + " --trims " + trims,
                "--cut 2 --scores none.csv --trims " + trims,
                "--cut 2 --scores " + good,
                "--cut NaN --scores " + good + " --trims " + trims,
                "--cut x --scores " + good + " --trims " + trims,
                "--cut 2 --window-days 9-1 --scores " + good + " --trims " + trims,
                "--cut 2 --unit hoof --scores " + good + " --trims " + trims,
                "--cut 2 --until 14.03.2026 --scores " + good + " --trims " + trims,
                "--cut 2 --scorer Nobody --scores " + good + " --trims " + trims,
                "--scores " + good + " --trims " + trims)) {
            Answer answer = run(("proof --json " + options).split(" "));
            assertThat(answer.status()).as(options).isEqualTo(2);
            assertThat(answer.out()).isEmpty();
            assertThat(answer.err().strip().lines()).hasSize(1);
            assertThat(answer.err()).doesNotContain("Exception");
        }
        Answer fine = run(("proof --json --cut 2 --scores " + good + " --trims " + trims).split(" "));
        assertThat(fine.status()).isZero();
        Map<String, String> got = FlatJson.of(fine.out());
        assertThat(got).containsEntry("corrected", "null").containsEntry("observed.specificity.value", "null");
        assertThat(got.get("why")).startsWith("Cannot be estimated");
    }

    /** The rule of the contract for every null of the document: a "why" stands beside it. */
    @Test
    void everyNullHasItsWhy(@TempDir Path folder) throws Exception {
        String head = "cow,date,score,scorer\n";
        List<String> tables = List.of(
                "1,2026-03-02,2,A\n",
                "1,2026-03-02,2,A\n2,2026-03-02,0,A\n1,2026-03-02,1,B\n",
                "1,2026-03-02,2,A\n1,2026-04-02,0,A\n1,2026-03-02,3,B\n2,2026-03-02,0,B\n");
        Path trims = Files.writeString(
                folder.resolve("t.csv"), "cow,date,leg,lesion,chance\n1,2026-03-03,LH,SU,\n1,2026-04-03,LH,NONE,0.5\n");
        for (String table : tables) {
            Path scores = Files.writeString(folder.resolve("s.csv"), head + table);
            for (String more : List.of("", " --unit leg", table.contains("B") ? " --compare A,B" : "")) {
                Answer answer =
                        run(("proof --json --cut 2 --scores " + scores + " --trims " + trims + more).split(" "));
                assertThat(answer.status()).as(answer.err()).isZero();
                Map<String, String> got = FlatJson.of(answer.out());
                got.forEach((key, value) -> {
                    if (value.equals("null")) {
                        String beside = key.replaceFirst("[^.]*$", "");
                        assertThat(got).as(key).containsKey(key.equals("weighted") ? "weightedWhy" : beside + "why");
                    }
                });
            }
        }
    }

    private record Answer(int status, String out, String err) {}

    private static Answer run(String... args) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int status = CommandLineRoot.run(new PrintWriter(out), new PrintWriter(err), args);
        return new Answer(status, out.toString(), err.toString());
    }

    private static Path file(String name) throws URISyntaxException {
        return Path.of(Objects.requireNonNull(ProofCommandTest.class.getResource("proof/" + name))
                .toURI());
    }
}
