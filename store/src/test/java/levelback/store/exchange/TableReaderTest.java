package levelback.store.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import levelback.scoring.proof.ScoreRow;
import levelback.scoring.value.Leg;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TableReaderTest {

    private static final Charset WINDOWS_1252 = Charset.forName("windows-1252");

    @ParameterizedTest
    @ValueSource(chars = {',', ';', '\t'})
    void findsTheSeparatorAndTakesColumnsInAnyOrder(char separator) {
        String text =
                "Scorer,pen,SCORE,cow,date\nAnna,7,2,007,2026-03-14\n\nBo,7,,008,2026-03-14\n".replace(',', separator);
        ScoreTable table = scores(text);
        assertThat(table.rows())
                .containsExactly(new ScoreRow("007", LocalDate.of(2026, 3, 14), 2, "Anna", Optional.empty()));
        assertThat(table.missing()).isEqualTo(1);
        assertThat(table.notes()).containsExactly("t.csv: not used: column pen.");
        assertThat(table.lines().get(0).line()).isEqualTo(2);
    }

    /** RFC 4180, section 2: quoted cells with separators, doubled quotes and line breaks; CRLF. */
    @Test
    void readsQuotesByTheStandard() {
        ScoreTable table =
                scores("cow,date,score,scorer\r\n\"a,1\",2026-03-14,1,\"O\"\"Neil\r\nII\"\r\nb,2026-03-14,0,x");
        assertThat(table.rows()).extracting(ScoreRow::cow).containsExactly("a,1", "b");
        assertThat(table.rows()).extracting(ScoreRow::scorer).containsExactly("O\"Neil\r\nII", "x");
        assertThat(table.lines().get(1).line()).isEqualTo(4);
    }

    @Test
    void readsUtf8WithAndWithoutMarkAndWindows1252() {
        String text = "cow,date,score,scorer\n1,2026-03-14,1,Jürgen\n";
        byte[] utf8 = text.getBytes(StandardCharsets.UTF_8);
        byte[] marked = ("\uFEFF" + text).getBytes(StandardCharsets.UTF_8);
        for (byte[] bytes : List.of(utf8, marked, text.getBytes(WINDOWS_1252))) {
            assertThat(ScoreTable.read(TableSource.of("t.csv", bytes))
                            .rows()
                            .get(0)
                            .scorer())
                    .isEqualTo("Jürgen");
        }
        assertThatThrownBy(() -> TableSource.of("t.csv", text.getBytes(StandardCharsets.UTF_16)))
                .hasMessage("t.csv: it is written in UTF-16; save it as CSV in UTF-8.");
    }

    @Test
    void takesADecimalCommaOnlyWhereItIsNoSeparator() {
        assertThat(scores("cow;date;score\n1;2026-03-14;2,5\n2;2026-03-14;1.5\n")
                        .rows())
                .extracting(ScoreRow::score)
                .containsExactly(2.5, 1.5);
        assertThatThrownBy(() -> scores("cow,date,score\n1,2026-03-14,\"2,5\"\n"))
                .hasMessage("t.csv, line 2: column score \"2,5\" is no number; write digits such as 2 or 2.5.");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        cow,date,score~1,2026-03-14,NaN                        | t.csv, line 2: column score "NaN" is no number
        cow,date,score~1,2026-03-14,Infinity                   | t.csv, line 2: column score
        cow,date,score~1,2026-03-14,1e999                      | t.csv, line 2: column score
        cow,date,score~1,2026-03-14,0x1p3                      | t.csv, line 2: column score
        cow,date,score~1,2026-03-14,2d                         | t.csv, line 2: column score
        cow,date,score~1,2026-03-14,two                        | t.csv, line 2: column score "two" is no number
        cow,date,score~1,14.03.2026,1                          | t.csv, line 2: column date "14.03.2026" is no date; write 2026-03-14.
        cow,date,score~1,2026-02-30,1                          | t.csv, line 2: column date "2026-02-30" is no date
        cow,date,score~1,,1                                    | t.csv, line 2: column date is empty
        cow,date,score~,2026-03-14,1                           | t.csv, line 2: column cow is empty
        cow,date,score~1,2026-03-14                            | t.csv, line 2: the row has 2 cells, the header has 3
        cow,date,score~1,2026-03-14,1,9                        | t.csv, line 2: the row has 4 cells, the header has 3
        cow,day,score~1,2026-03-14,1                           | t.csv, line 1: column date is missing; the header has cow, day, score
        cow,date,date,score~1,2026-03-14,2026-03-14,1          | t.csv, line 1: column date stands there twice
        cow,date,score~1,2026-03-14,                           | t.csv: no row has a score
        cow,date,score                                         | t.csv: no row has a score
        cow,date,score~"1,2026-03-14,1                         | t.csv, line 2: a quotation mark is not closed
        cow,date,score~"1"x,2026-03-14,1                       | t.csv, line 2: a quotation mark is not closed
        cow,date,score,leg~1,2026-03-14,1,LR                   | t.csv, line 2: column leg "LR" is no leg; write LF, RF, LH or RH.
        cow,date,score~1,2026-03-14,1~2,2026-03-14,1~1,2026-03-14,2 | t.csv, line 4: cow 1 has a score of that day on line 2 already
        """)
    void saysWhereAndWhatToDo(String text, String sentence) {
        assertThatThrownBy(() -> scores(text.replace('~', '\n')))
                .isInstanceOf(BadTable.class)
                .hasMessageStartingWith(sentence)
                .hasMessageEndingWith(".")
                .message()
                .doesNotContain("\n");
    }

    @Test
    void saysWhatIsWrongWithTheFile(@TempDir Path folder) throws Exception {
        assertThatThrownBy(() -> TableSource.of(folder.resolve("none.csv"))).hasMessageContaining("no such file");
        assertThatThrownBy(() -> TableSource.of(folder)).hasMessageContaining("this is a folder");
        Path binary = Files.write(folder.resolve("x.csv"), new byte[] {'c', 'o', 'w', 0, 1});
        assertThatThrownBy(() -> TableSource.of(binary)).hasMessageContaining("not a text table");
        Path nothing = Files.write(folder.resolve("e.csv"), new byte[0]);
        assertThatThrownBy(() -> ScoreTable.read(TableSource.of(nothing))).hasMessageContaining("it is empty");
        assertThat(TableSource.of("-", new ByteArrayInputStream("a\n".getBytes(StandardCharsets.UTF_8))))
                .isEqualTo(new TableSource("standard input", "a\n"));
    }

    @Test
    void theSameCowTwiceIsFineForTwoLegsOrTwoScorers() {
        assertThat(scores("cow,date,score,scorer,leg\n1,2026-03-14,1,A,LH\n1,2026-03-14,1,A,RH\n1,2026-03-14,1,B,LH\n")
                        .rows())
                .extracting(r -> r.leg().orElseThrow())
                .containsExactly(Leg.LH, Leg.RH, Leg.LH);
    }

    @Test
    void refusedRowsCanBeCollectedAndTheRestTaken() {
        List<String> refused = new ArrayList<>();
        ScoreTable table = ScoreTable.read(
                new TableSource("t.csv", "cow,date,score\n1,2026-03-14,x\n2,2026-03-14,1\n3,x\n"),
                ScoreTable.FORM,
                (row, bad) -> refused.add(bad.line() + " " + row.fields().get(0) + " " + bad.why()));
        assertThat(table.rows()).extracting(ScoreRow::cow).containsExactly("2");
        assertThat(refused)
                .containsExactly(
                        "2 1 column score \"x\" is no number; write digits such as 2 or 2.5.",
                        "4 3 the row has 2 cells, the header has 3; mend the row.");
    }

    @Test
    void otherHeadingsDatesAndDecimalsComeThroughAMapping() {
        TableForm theirs = ScoreTable.FORM.mapped(
                Map.of("Kuh-Nr", "cow", "Tag", "date", "Note", "score"),
                Optional.of(DateTimeFormatter.ofPattern("dd.MM.yyyy")),
                true);
        ScoreTable table = ScoreTable.read(
                new TableSource("t.csv", "Kuh-Nr,Tag,Note\n12,14.03.2026,\"2,5\"\n"), theirs, (row, bad) -> {
                    throw bad;
                });
        assertThat(table.rows())
                .containsExactly(new ScoreRow("12", LocalDate.of(2026, 3, 14), 2.5, "", Optional.empty()));
    }

    @Test
    void trimsKeepUnknownCodesWithANote() {
        TrimTable table = trims("""
                cow,date,leg,claw,zone,lesion,severity,stage,chance
                1,2026-03-14,rh,lateral,4,su,3,,
                1,2026-03-14,LH,,,zz,,,
                2,2026-03-14,,,,REFUSED,,,0.06
                3,2026-03-14,LH,,10,DD,,m4.1,
                """);
        assertThat(table.notes())
                .containsExactly("t.csv, line 3: lesion code ZZ is not on the list; it is kept as it is.");
        assertThat(table.rows()).extracting(r -> r.lesion()).containsExactly("SU", "ZZ", "REFUSED", "DD");
        assertThat(table.rows().get(2).chance()).hasValue(0.06);
        assertThat(table.rows().get(3).stage()).isEqualTo("M4.1");
        assertThat(table.lines().get(0).zone()).hasValue(4);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        1,2026-03-14,RH,,,,,,         | column lesion is empty; write NONE where
        1,2026-03-14,RH,,,SU,,,0      | column chance "0" must be above 0 and at most 1.
        1,2026-03-14,RH,,,SU,,,1.5    | column chance "1.5" must be above 0
        1,2026-03-14,RH,,13,SU,,,     | column zone "13" must be a whole number from 0 to 12.
        1,2026-03-14,RH,left,,SU,,,   | column claw "left" is no claw
        1,2026-03-14,RH,,,SU,4,,      | column severity "4" must be a whole number
        1,2026-03-14,RH,,,DD,,M9,     | column stage "M9" is no stage
        """)
    void trimsSayWhatIsWrong(String row, String why) {
        assertThatThrownBy(() -> trims("cow,date,leg,claw,zone,lesion,severity,stage,chance\n" + row + "\n"))
                .hasMessageStartingWith("t.csv, line 2: " + why);
    }

    @Test
    void readsAQuarterMillionRows() {
        StringBuilder text = new StringBuilder("cow,date,score,scorer\n");
        LocalDate start = LocalDate.of(2016, 1, 1);
        for (int i = 0; i < 260_000; i++) {
            text.append(i % 1000)
                    .append(',')
                    .append(start.plusDays(i / 1000))
                    .append(',')
                    .append(i % 4)
                    .append(",A\n");
        }
        assertThat(scores(text.toString()).rows()).hasSize(260_000);
    }

    private static ScoreTable scores(String text) {
        return ScoreTable.read(new TableSource("t.csv", text));
    }

    private static TrimTable trims(String text) {
        return TrimTable.read(new TableSource("t.csv", text));
    }
}
