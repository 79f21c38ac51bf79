package levelback.player.work.export;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.stream.Stream;
import levelback.player.cli.CommandLineRoot;
import levelback.store.book.Book;
import levelback.store.book.Books;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Out, in and out again through the commands. */
class CsvExportTest {

    @TempDir
    Path folder;

    private record Answer(int status, String out, String err) {}

    private static Answer run(Object... args) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        String[] texts = Stream.of(args).map(String::valueOf).toArray(String[]::new);
        int status = CommandLineRoot.run(new PrintWriter(out), new PrintWriter(err), texts);
        return new Answer(status, out.toString(), err.toString());
    }

    private static Answer well(Object... args) {
        Answer answer = run(args);
        assertThat(answer.status()).as(answer.err()).isZero();
        return answer;
    }

    private Path book(long seed, String... herds) {
        Path file = folder.resolve("farm" + seed + ".levelback");
        try (Book book = Books.create(file)) {
            for (String herd : herds) {
                book.step("test", "filled", b -> new RandomBook(b, seed).fill(herd));
            }
        }
        return file;
    }

    private static Map<String, String> read(Path out) throws Exception {
        Map<String, String> files = new TreeMap<>();
        try (Stream<Path> all = Files.walk(out)) {
            for (Path file : all.filter(Files::isRegularFile).toList()) {
                files.put(out.relativize(file).toString(), Files.readString(file));
            }
        }
        return files;
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void outInAndOutAgainIsTheSameBytes(long seed) throws Exception {
        Path book = book(seed, "Fixture Farm");
        Path first = folder.resolve("out");
        well("export", "--book", book, "--kind", "csv", "--out", first);
        Path copy = folder.resolve("copy.levelback");
        for (String kind : new String[] {"cows", "scores", "trims"}) {
            Answer in = well(
                    "import", "--book", copy, "--kind", kind, "--herd", "Fixture Farm", first.resolve(kind + ".csv"));
            assertThat(in.out()).contains(" 0 unchanged, 0 refused");
        }
        Path second = folder.resolve("again");
        well("export", "--book", copy, "--kind", "csv", "--out", second);
        assertThat(read(first)).hasSize(4).isEqualTo(read(second));
        assertThat(read(first).get("scores.csv"))
                .startsWith("cow,date,score,scorer,leg,scale\r\n")
                .contains("2026-03-16");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "--pseudonyms"})
    void proofReadsTheSameFiguresFromTheTables(String more) {
        Path book = book(7, "Fixture Farm");
        Path out = folder.resolve("out");
        if (more.isEmpty()) {
            well("export", "--book", book, "--kind", "csv", "--out", out);
        } else {
            well("export", "--book", book, "--kind", "csv", "--out", out, more);
        }
        for (String unit : new String[] {"cow", "leg"}) {
            Answer fromBook = well("proof", "--book", book, "--cut", 2, "--unit", unit, "--json");
            Answer fromTables = well(
                    "proof",
                    "--scores",
                    out.resolve("scores.csv"),
                    "--trims",
                    out.resolve("trims.csv"),
                    "--cut",
                    2,
                    "--unit",
                    unit,
                    "--json");
            assertThat(rounded(fromTables.out())).isEqualTo(rounded(fromBook.out()));
            assertThat(fromBook.out()).contains("\"sensitivity\"");
        }
    }

    /** Sums run over the cows in another order, which moves the sixteenth digit; twelve are held. */
    private static String rounded(String json) {
        return java.util.regex.Pattern.compile("-?\\d+\\.\\d+(E-?\\d+)?")
                .matcher(json)
                .replaceAll(n -> new java.math.BigDecimal(n.group())
                        .round(new java.math.MathContext(12))
                        .stripTrailingZeros()
                        .toString());
    }

    @Test
    void pseudonymsLeaveNoNameAndNoNumberBehind() throws Exception {
        Path book = book(8, "Fixture Farm");
        Path out = folder.resolve("out");
        Answer said = well("export", "--book", book, "--kind", "csv", "--out", out, "--pseudonyms", "--json");
        String all = String.join("\n", read(out).values());
        assertThat(all)
                .contains("C0001")
                .containsPattern(",S\\d,mobility-0-3|,S\\d,,mobility-0-3")
                .doesNotContain("Anna", "李", "Bella", "DE0987", "27600000", "kicks");
        assertThat(all.lines().filter(line -> line.matches("0?4[0-2]\\d,.*"))).isEmpty();
        assertThat(said.out()).contains("\"personalData\" : \"It names nobody", "\"notCarried\"", "\"files\"");
    }

    @Test
    void aSpreadsheetRunsNoCell() throws Exception {
        Path book = book(9, "Fixture Farm");
        Path raw = folder.resolve("raw");
        Path safe = folder.resolve("safe");
        well("export", "--book", book, "--kind", "csv", "--out", raw);
        well("export", "--book", book, "--kind", "csv", "--out", safe, "--for-spreadsheet");
        assertThat(read(raw).get("scores.csv")).contains(",=cmd|' /C calc'!A0,");
        String all = String.join("\n", read(safe).values());
        assertThat(all).contains(",'=cmd|' /C calc'!A0,", "\"'=Bella");
        assertThat(all.lines().filter(line -> line.matches("(.*,)?\"?[=+@\\t-].*")))
                .isEmpty();
    }

    @Test
    void aRatingIsOfACowThatTwoScoredWhetherOrNotALegWasNamed() throws Exception {
        Path book = folder.resolve("rated.levelback");
        Path scores = Files.writeString(folder.resolve("s.csv"), """
                cow,date,score,scorer,leg
                1,2026-03-02,2,Anna,LH
                1,2026-03-02,1,Ben,
                2,2026-03-02,3,Anna,
                3,2026-03-02,1,Anna,LH
                3,2026-03-02,2,Anna,RH
                3,2026-03-02,2,Ben,
                """);
        well("import", "--book", book, "--kind", "scores", "--scale", "mobility-0-3", scores);
        well("export", "--book", book, "--kind", "csv", "--out", folder.resolve("out"));
        assertThat(Objects.requireNonNull(read(folder.resolve("out")).get("ratings.csv"))
                        .lines())
                .containsExactly("scorer,clip,score,cow,session", "Anna,2026-03-02 1,2,1,1", "Ben,2026-03-02 1,1,1,1");
    }

    @Test
    void anEarlierExportIsNotWrittenOverUnasked() throws Exception {
        Path book = book(10, "Fixture Farm");
        Path out = Files.createDirectory(folder.resolve("out"));
        Files.writeString(out.resolve("mine.txt"), "stays");
        well("export", "--book", book, "--kind", "csv", "--out", out);
        Answer again = run("export", "--book", book, "--kind", "csv", "--out", out);
        assertThat(again.status()).isEqualTo(2);
        assertThat(again.err().strip().lines()).hasSize(1);
        assertThat(again.err()).contains("--replace");
        well("export", "--book", book, "--kind", "csv", "--out", out, "--replace");
        assertThat(read(out)).containsEntry("mine.txt", "stays").hasSize(5);
    }

    @Test
    void severalHerdsGoToFoldersOfTheirOwn() throws Exception {
        Path book = book(11, "North/../Farm", "South");
        Path out = folder.resolve("out");
        well("export", "--book", book, "--kind", "csv", "--out", out);
        assertThat(read(out).keySet())
                .contains("South/scores.csv", "North-..-Farm/cows.csv")
                .hasSize(8);
        well("export", "--book", book, "--kind", "csv", "--out", folder.resolve("one"), "--herd", "South");
        assertThat(read(folder.resolve("one"))).hasSize(4);
    }

    @Test
    void whatIsWrongIsOneSentence() throws Exception {
        Path book = book(12, "Fixture Farm");
        Path file = Files.writeString(folder.resolve("file"), "in the way");
        for (Answer wrong : new Answer[] {
            run("export", "--book", book, "--kind", "nonsense", "--out", folder.resolve("o")),
            run("export", "--book", folder.resolve("no.levelback"), "--kind", "csv", "--out", folder.resolve("o")),
            run("export", "--book", book, "--kind", "csv", "--out", file),
            run("export", "--book", book, "--kind", "csv", "--out", folder.resolve("o"), "--herd", "Nobody"),
        }) {
            assertThat(wrong.status()).isEqualTo(2);
            assertThat(wrong.err().strip().lines()).hasSize(1);
        }
        assertThat(Files.exists(folder.resolve("no.levelback"))).isFalse();
    }
}
