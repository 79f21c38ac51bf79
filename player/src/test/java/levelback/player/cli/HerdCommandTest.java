package levelback.player.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The commands {@code herd} and {@code sample-size} from files to keys. The files under {@code herd/} are the check values
 * of the same names (R 4.2.2, survival 3.5-3; Python 3.11; cases counted by hand; {@code sample-size.json} is
 * {@code sample-size/worked.json}).
 */
class HerdCommandTest {

    @TempDir
    Path folder;

    @Test
    void everyKeyOfTheCheckValuesComesOut() throws Exception {
        Answer answer = run(
                "herd",
                "--json",
                "--cut",
                "2",
                "--scores",
                file("visits-scores.csv"),
                "--trims",
                file("visits-trims.csv"));
        assertThat(answer.status()).isZero();
        Map<String, String> got = FlatJson.of(answer.out());
        int compared = 0;
        for (Map.Entry<String, String> entry :
                FlatJson.of(Files.readString(Path.of(file("visits.json")))).entrySet()) {
            // The file has three kinds of limits; log-log is the one that the definitions fix.
            String key = entry.getKey().replace("daysToTreatment.loglog.", "daysToTreatment.");
            if (!key.matches("source|command|daysToTreatment\\.(log|plain)\\..*")) {
                compared++;
                same(got, key, entry.getValue());
            }
        }
        assertThat(compared).isEqualTo(8 * 8 + 5 + 5);
        assertThat(got).containsKeys("flow/6.notSeen", "newCaseRate.low", "repeatOffenders/0.cow");
    }

    @Test
    void theWorkedHerdIsCountedAsByHandAndWithoutTrimsThereAreNoDays() throws Exception {
        Map<String, String> worked = FlatJson.of(Files.readString(Path.of(file("worked.json"))));
        StringBuilder rows = new StringBuilder("cow;date;score\n");
        for (String cow : List.of("a", "b", "c", "d")) {
            String[] levels =
                    Objects.requireNonNull(worked.get("scores." + cow)).split(" ", -1);
            for (int v = 0; v < levels.length; v++) {
                rows.append(cow + ";" + LocalDate.of(2026, 1, 5).plusDays(14L * v) + ";" + levels[v] + ",0\n");
            }
        }
        Answer answer = run("herd", "--json", "--cut", "2", "--scores", table("w.csv", rows.toString()));
        Map<String, String> got = FlatJson.of(answer.out());
        for (String key : List.of("newCases", "riskDays", "newCaseRatePer30Days", "chronic", "cured")) {
            same(got, key, Objects.requireNonNull(worked.get(key)));
        }
        assertThat(got).containsEntry("daysToTreatment", "null");
        assertThat(got.get("why")).contains("no trim records");
    }

    /** kaplan-meier.json, both cases, rebuilt as tables; log-log limits, a median or an upper limit not reached is null. */
    @Test
    void daysToTreatmentAreThoseOfSurvfitWithNullWhereNotReached() throws Exception {
        Map<String, String> cases = FlatJson.of(Files.readString(Path.of(file("kaplan-meier.json"))));
        LocalDate last = LocalDate.of(2026, 3, 1);
        for (int c = 0; c < 2; c++) {
            StringBuilder scores = new StringBuilder("cow,date,score\n");
            StringBuilder trims = new StringBuilder("cow,date,leg,lesion\nother," + last + ",LH,NONE\n");
            for (int i = 0; cases.containsKey("cases/" + c + ".times/" + i); i++) {
                long days = Long.parseLong(Objects.requireNonNull(cases.get("cases/" + c + ".times/" + i)));
                // Censored cows are followed to the last date; the others are lifted after so many days.
                scores.append(i + "," + last.minusDays(days) + ",3\n");
                if ("1".equals(cases.get("cases/" + c + ".events/" + i))) {
                    trims.append(i + "," + last + ",RH,SU\n");
                }
            }
            Map<String, String> got = FlatJson.of(run(
                            "herd",
                            "--json",
                            "--cut",
                            "2",
                            "--scores",
                            table("s.csv", scores.toString()),
                            "--trims",
                            table("t.csv", trims.toString()))
                    .out());
            for (String key : List.of("median", "n", "censored")) {
                same(got, "daysToTreatment." + key, Objects.requireNonNull(cases.get("cases/" + c + "." + key)));
            }
            for (String key : List.of("low", "high")) {
                same(got, "daysToTreatment." + key, Objects.requireNonNull(cases.get("cases/" + c + ".loglog." + key)));
            }
            assertThat(got.get("daysToTreatment.why")).isNotBlank();
        }
    }

    /** Half of a herd of 101 scored: n·(N − 1)/(N − n) = 50·100/51; Wilson by the formula with 98.04 in place of 50. */
    @Test
    void theSizeOfTheHerdNarrowsTheIntervalAndHighestScoreOfADayCounts() throws Exception {
        StringBuilder rows = new StringBuilder("cow,date,score,scorer\n");
        for (int i = 0; i < 50; i++) {
            rows.append(i + ",2026-03-02," + (i < 10 ? "3" : "") + ",A\n" + i + ",2026-03-02,1,B\n");
        }
        Map<String, String> got = FlatJson.of(run(
                        "herd",
                        "--json",
                        "--cut",
                        "2",
                        "--severe",
                        "3",
                        "--herd-size",
                        "101",
                        "--scores",
                        table("f.csv", rows.toString()))
                .out());
        assertThat(got).containsEntry("visits/0.scored", "50").containsEntry("visits/0.unscored", "51");
        assertThat(got).containsEntry("visits/0.lame", "10").containsEntry("visits/0.severe", "10");
        double z = 1.959963984540054;
        double n = 50 * 100 / 51.0;
        double half = z * Math.sqrt(.2 * .8 / n + z * z / (4 * n * n)) / (1 + z * z / n);
        double centre = (.2 + z * z / (2 * n)) / (1 + z * z / n);
        same(got, "visits/0.prevalence.low", String.valueOf(centre - half));
        same(got, "visits/0.prevalence.high", String.valueOf(centre + half));
        assertThat(got).containsEntry("newCaseRatePer30Days", "null");
        assertThat(got.get("newCaseRate.why")).isNotBlank();
    }

    @Test
    void badInputIsOneSentenceStatusTwoAndNothingOnStandardOutput() throws Exception {
        String good = table("g.csv", "cow,date,score\n1,2026-03-02,2\n2,2026-03-02,0\n");
        String twice = table("d.csv", "cow,date,score,scorer,leg\n1,2026-03-02,2,A,LH\n1,2026-03-02,2,A,LH\n");
        for (String options : List.of(
                "--cut 2",
                "--cut NaN --scores " + good,
                "--scores " + good,
                "--cut 2 --severe 1 --scores " + good,
                "--cut 2 --herd-size 1 --scores " + good,
                "--cut 2 --herd-size 0 --scores " + good,
                "--cut 2 --level 0 --scores " + good,
                "--cut 2 --book none.levelback",
                "--cut 2 --scores " + twice,
                "--cut 2 --scores " + table("e.csv", ""),
                "--cut 2 --scores " + table("h.csv", "cow,date,score\n1,2026-03-02,\n"))) {
            Answer answer = run(("herd --json " + options).split(" ", -1));
            assertThat(answer.status()).as(options).isEqualTo(2);
            assertThat(answer.out()).isEmpty();
            assertThat(answer.err().strip().lines()).hasSize(1);
        }
        assertThat(run("herd", "--cut", "2", "--scores", twice).err()).contains("line 3", "line 2");
    }

    @Test
    void thePersonsTableNamesTheFigures() throws Exception {
        Answer answer =
                run("herd", "--cut", "2", "--scores", file("visits-scores.csv"), "--trims", file("visits-trims.csv"));
        assertThat(answer.out())
                .contains("32.1 (25.0 to 40.3)", "New cases (lame after two sound scores): 60 in 6244 cow days")
                .contains("median 24, 14 to 45 (96 cows, 28 not lifted)", "Chronic", "34 cows", "59 times");
    }

    @Test
    void aScoreAfterTodayIsNotedAndCounts() throws Exception {
        Answer answer =
                run("herd", "--json", "--cut", "2", "--scores", table("n.csv", "cow,date,score\n1,9998-03-02,2\n"));
        assertThat(answer.status()).isZero();
        assertThat(answer.err()).contains("after today");
    }

    @Test
    void sampleSizesOfTheCheckValues() throws Exception {
        Map<String, String> cases = FlatJson.of(Files.readString(Path.of(file("sample-size.json"))));
        int compared = 0;
        for (int i = 0; cases.containsKey("cases/" + i + ".herd"); i++) {
            String at = "cases/" + i + ".";
            Answer answer = run(
                    "sample-size",
                    "--json",
                    "--herd",
                    Objects.requireNonNull(cases.get(at + "herd")),
                    "--margin",
                    Objects.requireNonNull(cases.get(at + "margin")),
                    "--expected",
                    Objects.requireNonNull(cases.get(at + "expected")),
                    "--level",
                    Objects.requireNonNull(cases.get(at + "level")));
            same(FlatJson.of(answer.out()), "cows", Objects.requireNonNull(cases.get(at + "cows")));
            compared++;
        }
        assertThat(compared).isEqualTo(16);
        assertThat(run("sample-size", "--herd", "200").out())
                .startsWith("Score 66 of the 200 cows")
                .hasLineCount(1);
        for (String options : List.of(
                "", "--herd 0", "--herd x", "--herd 9 --margin 0", "--herd 9 --expected 101", "--herd 9 --level 100")) {
            Answer bad = run(("sample-size " + options).strip().split(" ", -1));
            assertThat(bad.status()).as(options).isEqualTo(2);
            assertThat(bad.out()).isEmpty();
            assertThat(bad.err().strip().lines()).hasSize(1);
        }
    }

    private static void same(Map<String, String> got, String key, String expected) {
        assertThat(got).containsKey(key);
        String value = Objects.requireNonNull(got.get(key));
        if (expected.matches("-?[0-9][0-9.Ee-]*") && !expected.matches("\\d{4}-.*")) {
            assertThat(Double.parseDouble(value)).as(key).isCloseTo(Double.parseDouble(expected), within(1e-9));
        } else {
            assertThat(value).as(key).isEqualTo(expected);
        }
    }

    private String table(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text).toString();
    }

    private record Answer(int status, String out, String err) {}

    private static Answer run(String... args) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int status = CommandLineRoot.run(new PrintWriter(out), new PrintWriter(err), args);
        return new Answer(status, out.toString(), err.toString());
    }

    private static String file(String name) throws URISyntaxException {
        return Path.of(Objects.requireNonNull(HerdCommandTest.class.getResource("herd/" + name))
                        .toURI())
                .toString();
    }
}
