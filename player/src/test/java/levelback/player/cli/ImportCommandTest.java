package levelback.player.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import levelback.scoring.value.Leg;
import levelback.store.book.Book;
import levelback.store.book.Books;
import levelback.store.herd.Cow;
import levelback.store.herd.Herd;
import levelback.store.herd.Person;
import levelback.store.herd.Score;
import levelback.store.herd.Visit;
import levelback.store.lane.GateRead;
import levelback.store.trim.LiftCard;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a user of {@code import}, {@code check} and {@code history} sees. */
class ImportCommandTest {

    private static final LocalDate DAY = LocalDate.of(2026, 3, 14);

    @TempDir
    Path folder;

    private Path book;
    private String out = "";
    private String err = "";

    @BeforeEach
    void name() {
        book = folder.resolve("a.levelback");
    }

    @Test
    void takesScoresOnceAndListsNewCows() throws IOException {
        Path scores =
                file("scores.csv", "cow,date,score,scorer,leg\n0412,2026-03-14,2,Anna,LH\n77,2026-03-14,0,Anna,\n");
        assertThat(scores(scores, "--scale", "mobility-0-3", "--herd", "Otter Hill", "--json"))
                .isZero();
        assertThat(out)
                .contains("\"taken\":2,\"unchanged\":0,\"refused\":[]")
                .contains("\"newCows\":[\"0412\",\"77\"]");
        byte[] before = Files.readAllBytes(book);
        assertThat(scores(scores, "--json")).isZero();
        assertThat(out).contains("\"taken\":0,\"unchanged\":2,\"refused\":[]").contains("\"newCows\":[]");
        assertThat(Files.readAllBytes(book))
                .as("the same file again changes nothing")
                .isEqualTo(before);
        try (Book open = Books.open(book)) {
            Herd herd = open.herd().herds().get(0);
            assertThat(herd.name()).isEqualTo("Otter Hill");
            Cow cow = open.herd().cowByNumber(herd.id(), "0412", DAY).orElseThrow();
            Score score = open.herd().scoresOf(cow.id()).get(0);
            assertThat(score.level()).isEqualTo(2);
            assertThat(score.leg()).contains(Leg.LH);
            assertThat(open.nextUndo()).contains("Import of " + scores);
            open.undo("Anna");
            assertThat(open.herd().herds()).isEmpty();
        }
    }

    @Test
    void asksForTheScaleAndNeverGuessesIt() throws IOException {
        Path cows = file("cows.csv", "cow\n1\n");
        Path scores = file("scores.csv", "cow,date,score\n1,2026-03-14,2\n");
        assertThat(scores(scores)).isEqualTo(2);
        assertThat(err)
                .startsWith(
                        scores + " does not say on which gait scale these scores are, and neither does the herd; add"
                                + " --scale with one of ")
                .contains("mobility-0-3");
        assertThat(book).as("nothing half-written").doesNotExist();

        assertThat(run("import", "--book", book.toString(), "--kind", "cows", cows.toString()))
                .as("cows need no scale")
                .isZero();
        assertThat(scores(scores)).as("and choose none").isEqualTo(2);
        assertThat(scores(scores, "--scale", "mobility-0-4")).isEqualTo(2);
        assertThat(err).startsWith("There is no gait scale mobility-0-4; choose one of ");
        assertThat(scores(scores, "--scale", "mobility-0-3")).isZero();
        Path more = file("more.csv", "cow,date,score\n1,2026-03-28,3\n");
        assertThat(scores(more)).as("from now on the herd has one").isZero();
        Path named = file("named.csv", "cow,date,score,scale\n1,2026-04-11,5,gait-1-5\n");
        assertThat(scores(named)).isZero();
        try (Book open = Books.open(book)) {
            assertThat(open.herd().scoresOf(open.herd().herds().get(0).id()))
                    .extracting(Score::scaleId)
                    .containsExactly("mobility-0-3", "mobility-0-3", "gait-1-5");
        }
    }

    @Test
    void refusesAScoreThatTheScaleDoesNotHave() throws IOException {
        Path scores = file("s.csv", "cow,date,score\n1,2026-03-14,4\n2,2026-03-14,1.5\n3,2026-03-14,1\n");
        assertThat(scores(scores, "--scale", "mobility-0-3")).isEqualTo(2);
        assertThat(out).isEmpty();
        assertThat(err.strip())
                .isEqualTo(scores
                        + ", line 2: column score has 4, which mobility-0-3 does not have; it runs from 0 to 3 in"
                        + " steps of 1. One more row is bad. Nothing was taken; mend the table, or take the other rows"
                        + " with --skip-bad.");
        assertThat(book).doesNotExist();
    }

    @Test
    void takesTheGoodRowsWhenAskedAndWritesTheOthersDown() throws IOException {
        Path scores =
                file("s.csv", "cow,date,score\n1,2026-03-14,2\n2,14.03.2026,1\n\"3\",2026-03-14,7\n4,2026-03-14,x\n");
        assertThat(scores(scores, "--scale", "mobility-0-3", "--skip-bad", "--json"))
                .isZero();
        assertThat(out)
                .contains("\"taken\":1")
                .contains("\"line\":3")
                .contains("\"line\":4")
                .contains("\"line\":5");
        List<String> refused = Files.readAllLines(folder.resolve("s.csv.refused.csv"));
        assertThat(refused).hasSize(4);
        assertThat(refused.get(0)).isEqualTo("line,why,cow,date,score");
        assertThat(refused.get(1)).startsWith("3,").endsWith(",2,14.03.2026,1");
        assertThat(refused.get(2)).startsWith("4,").endsWith(",3,2026-03-14,7");
        assertThat(refused.get(3)).startsWith("5,").endsWith(",4,2026-03-14,x");
    }

    @Test
    void aWrongColumnAndAWrongDateNameTheirPlace() throws IOException {
        Path column = file("c.csv", "animal,date,score\n1,2026-03-14,2\n");
        assertThat(scores(column, "--scale", "mobility-0-3")).isEqualTo(2);
        assertThat(err).startsWith(column + ", line 1: column cow is missing; the header has animal, date, score");
        Path date = file("d.csv", "cow,date,score\n1,2026-02-30,2\n");
        assertThat(scores(date, "--scale", "mobility-0-3")).isEqualTo(2);
        assertThat(err).startsWith(date + ", line 2: column date \"2026-02-30\" is no date");
        assertThat(err.strip().lines()).hasSize(1);
        assertThat(run("import", "--book", book.toString(), "--kind", "scores", folder + "/none.csv"))
                .isEqualTo(2);
        assertThat(err).contains("there is no such file");
        assertThat(book).doesNotExist();
    }

    @Test
    void readsWhatOtherProgramsWrite() throws IOException {
        Path mapping = file(
                "m.json",
                "{\"columns\":{\"Stallnummer\":\"cow\",\"Datum\":\"date\",\"Note\":\"score\",\"Prüfer\":\"scorer\"},"
                        + "\"date\":\"dd.MM.yyyy\",\"decimal\":\",\"}");
        Path table = folder.resolve("t.csv");
        Files.write(
                table,
                "Stallnummer;Datum;Note;Prüfer\r\n0007;14.03.2026;2,5;Jörg\r\n"
                        .getBytes(Charset.forName("windows-1252")));
        assertThat(scores(table, "--scale", "gait-1-5", "--mapping", mapping.toString()))
                .isEqualTo(2);
        assertThat(err).contains("column score has 2.5, which gait-1-5 does not have");
        Path halves = folder.resolve("h.csv");
        Files.write(
                halves,
                "\uFEFFStallnummer;Datum;Note;Prüfer\n0007;14.03.2026;2,0;Jörg\n".getBytes(StandardCharsets.UTF_8));
        assertThat(scores(halves, "--scale", "gait-1-5", "--mapping", mapping.toString()))
                .isZero();
        try (Book open = Books.open(book)) {
            assertThat(open.herd().people()).extracting(Person::name).containsExactly("Jörg");
            assertThat(open.herd().cows(open.herd().herds().get(0).id(), DAY))
                    .extracting(Cow::number)
                    .containsExactly("0007");
        }
        Path broken = file("b.json", "{\"columns\":[1]}");
        assertThat(scores(halves, "--scale", "gait-1-5", "--mapping", broken.toString()))
                .isEqualTo(2);
        assertThat(err).contains("is not as it should be").contains("\"columns\"");
        Path nonsense = file("n.json", "{\"date\":\"HH:mm\"}");
        assertThat(scores(halves, "--scale", "gait-1-5", "--mapping", nonsense.toString()))
                .isEqualTo(2);
        assertThat(err).contains("no way to write a day");
    }

    @Test
    void aCowOrATagThatComesTwiceIsRefusedWithBothLines() throws IOException {
        Path twice = file("cows.csv", "cow,tag\n1,900\n2,901\n1,902\n");
        assertThat(cows(twice)).isEqualTo(2);
        assertThat(err).contains("line 4").contains("line 2").contains("keep one of the two rows");
        Path tag = file("tags.csv", "cow,tag\n1,900\n2,900\n");
        assertThat(cows(tag)).isEqualTo(2);
        assertThat(err).contains("line 3: column tag has 900 again, which stands on line 2 already");
        Path rounded = file("rounded.csv", "cow,tag\n1,2.76E+14\n");
        assertThat(cows(rounded)).isEqualTo(2);
        assertThat(err).contains("\"2.76E+14\" was rounded by a spreadsheet");
        assertThat(book).doesNotExist();
    }

    @Test
    void takesCowsAndFillsInWhatIsNew() throws IOException {
        Path cows = file("cows.csv", """
                cow,official_id,tag,name,birth,calving,parity
                0412,DE 09 1,276000000000412,Berta,2021-05-01,2025-12-02,3
                77,,,,,,
                """);
        assertThat(cows(cows, "--herd", "Otter Hill", "--zone", "Europe/Dublin"))
                .isZero();
        assertThat(cows(cows)).isZero();
        assertThat(out).contains("0 taken, 2 unchanged");
        Path more = file("more.csv", "cow,tag,parity\n77,276000000000077,2\n");
        assertThat(cows(more)).isZero();
        assertThat(out).contains("1 taken, 0 unchanged");
        Path stolen = file("stolen.csv", "cow,tag\n78,276000000000077\n");
        assertThat(cows(stolen)).isEqualTo(2);
        assertThat(err).contains("which cow 77 wears in the book");
        Path other = file("other.csv", "cow,official_id\n0412,DE 09 2\n");
        assertThat(cows(other)).isEqualTo(2);
        assertThat(err).contains("has the official number DE 09 1 in the book and DE 09 2 here");
        try (Book open = Books.open(book)) {
            Herd herd = open.herd().herds().get(0);
            assertThat(herd.zone().getId()).isEqualTo("Europe/Dublin");
            Cow berta = open.herd().cowByNumber(herd.id(), "0412", DAY).orElseThrow();
            assertThat(berta.name()).contains("Berta");
            assertThat(berta.calving()).contains(LocalDate.of(2025, 12, 2));
            assertThat(berta.parity()).hasValue(3);
            Cow other77 = open.herd().cowByNumber(herd.id(), "77", DAY).orElseThrow();
            assertThat(other77.tag()).contains("276000000000077");
        }
    }

    @Test
    void takesTrimsAsCardsAndOnlyOnce() throws IOException {
        Path trims = file("trims.csv", """
                cow,date,leg,claw,zone,lesion,severity,stage,chance
                412,2026-03-15,LH,lateral,4,SU,2,,
                412,2026-03-15,LH,medial,4,SU,1,,
                412,2026-03-15,RH,,,NONE,,,
                77,2026-03-15,RH,interdigital,,DD,,M2,0.25
                9,2026-03-15,,,,REFUSED,,,0.25
                """);
        assertThat(trims(trims, "--scorer", "Tess", "--json")).isZero();
        assertThat(out).contains("\"taken\":5,\"unchanged\":0");
        assertThat(trims(trims, "--json")).isZero();
        assertThat(out).contains("\"taken\":0,\"unchanged\":5");
        try (Book open = Books.open(book)) {
            Herd herd = open.herd().herds().get(0);
            List<LiftCard> cards = open.trim().cardsOf(herd.id(), DAY, DAY.plusDays(1));
            assertThat(cards).hasSize(3);
            LiftCard first = cards.get(0);
            assertThat(first.feet()).hasSize(2);
            assertThat(first.feet().get(0).findings()).hasSize(2);
            assertThat(first.feet().get(1).foot().noLesion()).isTrue();
            assertThat(cards.get(1).lift().chance()).hasValue(0.25);
            assertThat(cards.get(2).lift().refused()).isTrue();
            assertThat(open.check().problems()).isEmpty();
        }
    }

    @Test
    void refusesTrimsThatContradictThemselves() throws IOException {
        Path both = file("both.csv", "cow,date,leg,lesion\n1,2026-03-15,,REFUSED\n1,2026-03-15,LH,SU\n");
        assertThat(trims(both)).isEqualTo(2);
        assertThat(err).contains("line 3: the lift of cow 1 on 2026-03-15 is both refused and done");
        Path noLeg = file("noleg.csv", "cow,date,leg,lesion\n1,2026-03-15,,SU\n");
        assertThat(trims(noLeg)).isEqualTo(2);
        assertThat(err).contains("column leg is empty");
        Path chances =
                file("chance.csv", "cow,date,leg,lesion,chance\n1,2026-03-15,LH,SU,0.5\n1,2026-03-15,RH,SU,0.25\n");
        assertThat(trims(chances)).isEqualTo(2);
        assertThat(err).contains("one draw has one chance");
    }

    @Test
    void takesGateReadsInAnyOffset() throws IOException {
        Path reads = file("reads.csv", """
                time,tag,reader,note
                2026-03-14T05:47:16.420Z,999000000000042,RACE1,x
                2026-03-14T06:47:29+01:00,999000000000117,RACE1,
                2026-03-14 06:47:30,999000000000118,RACE1,
                """);
        assertThat(run(
                        "import",
                        "--book",
                        book.toString(),
                        "--kind",
                        "reads",
                        "--zone",
                        "Europe/Berlin",
                        reads.toString()))
                .isZero();
        assertThat(out).contains("3 taken").contains("not used: column note");
        try (Book open = Books.open(book)) {
            Visit visit = open.herd().visits(open.herd().herds().get(0).id()).get(0);
            assertThat(visit.date()).isEqualTo(DAY);
            assertThat(open.lane().readsOf(visit.id()))
                    .extracting(GateRead::at)
                    .extracting(Object::toString)
                    .containsExactly("2026-03-14T05:47:16.420Z", "2026-03-14T05:47:29Z", "2026-03-14T05:47:30Z");
        }
        Path wrong = file("wrong.csv", "time,tag\nyesterday,1\n");
        assertThat(run("import", "--book", book.toString(), "--kind", "reads", wrong.toString()))
                .isEqualTo(2);
        assertThat(err).contains("line 2: column time \"yesterday\" is no time");
    }

    @Test
    void anEarlierFileDoesNotTakeACorrectionBack() throws IOException {
        Path first = file("first.csv", "cow,date,score,scorer\n1,2026-03-14,2,Anna\n");
        Path corrected = file("second.csv", "cow,date,score,scorer\n1,2026-03-14,3,Anna\n");
        assertThat(scores(first, "--scale", "mobility-0-3")).isZero();
        assertThat(scores(corrected)).isZero();
        assertThat(scores(first)).isZero();
        assertThat(out).contains("0 taken, 1 unchanged");
        try (Book open = Books.open(book)) {
            Herd herd = open.herd().herds().get(0);
            assertThat(open.herd().scoresOf(herd.id())).extracting(Score::level).containsExactly(3.0);
            assertThat(open.herd().supersededScoresOf(herd.id()))
                    .extracting(Score::level)
                    .containsExactly(2.0);
        }
    }

    @Test
    void asksWhichHerdWhereThereAreSeveral() throws IOException {
        Path cows = file("cows.csv", "cow\n1\n");
        assertThat(cows(cows, "--herd", "Otter Hill")).isZero();
        assertThat(cows(cows, "--herd", "Alder Brook")).isZero();
        assertThat(cows(cows)).isEqualTo(2);
        assertThat(err.strip()).isEqualTo("The book has Alder Brook, Otter Hill; say which herd with --herd NAME.");
    }

    @Test
    void refusesWhatItDoesNotKnowInASentence() throws IOException {
        Path cows = file("cows.csv", "cow\n1\n");
        assertThat(run("import", "--book", book.toString(), "--kind", "wagons", cows.toString()))
                .isEqualTo(2);
        assertThat(err.strip())
                .isEqualTo("There is no kind \"wagons\" of import; choose cows, scores, trims, reads or recording.");
        assertThat(cows(cows, "--zone", "Moon/Base")).isEqualTo(2);
        assertThat(err.strip()).isEqualTo("There is no time zone \"Moon/Base\"; write it as Europe/Berlin.");
        assertThat(run("import", "--book", cows.toString(), "--kind", "cows", cows.toString()))
                .isEqualTo(2);
        assertThat(err.strip()).isEqualTo(cows + " is not a Levelback book; choose another file.");
        assertThat(cows).as("and it is still there").exists();
        Path text = file("holiday.mp4", "not a film");
        assertThat(run("import", "--book", book.toString(), "--kind", "recording", text.toString()))
                .isEqualTo(2);
        assertThat(book).doesNotExist();
    }

    @Test
    void checkAndHistorySayWhatTheBookHolds() throws IOException {
        Path scores = file("scores.csv", "cow,date,score,scorer\n0412,2026-03-14,2,Anna\n77,2026-03-14,0,Anna\n");
        assertThat(scores(scores, "--scale", "mobility-0-3", "--scorer", "Ben")).isZero();
        assertThat(run("check", "--book", book.toString(), "--json")).isZero();
        assertThat(out.strip())
                .isEqualTo("{\"ok\":true,\"problems\":[],\"schema\":1,\"counts\":{\"herds\":1,\"cows\":2,\"visits\":1,"
                        + "\"recordings\":0,\"passes\":0,\"scores\":2,\"trims\":0}}");
        assertThat(run("check", "--book", folder.resolve("none").toString())).isEqualTo(2);
        assertThat(err).startsWith("There is no book ");
        assertThat(run("history", "--book", book.toString(), "--cow", "0412", "--json"))
                .isZero();
        assertThat(out)
                .contains("\"by\":\"Ben\",\"what\":\"Import of " + scores + "\",\"kind\":\"score\"")
                .contains("\"from\":null,\"to\":{\"uuid\":")
                .doesNotContain("\"number\":\"77\"");
        assertThat(run("history", "--book", book.toString(), "--cow", "412")).isEqualTo(2);
        assertThat(err.strip()).isEqualTo("No cow in this book has the number 412; zeros in front count.");
    }

    private int scores(Path table, String... more) {
        return imported("scores", table, more);
    }

    private int cows(Path table, String... more) {
        return imported("cows", table, more);
    }

    private int trims(Path table, String... more) {
        return imported("trims", table, more);
    }

    private int imported(String kind, Path table, String... more) {
        List<String> args = new java.util.ArrayList<>(
                List.of("import", "--book", book.toString(), "--kind", kind, table.toString()));
        args.addAll(List.of(more));
        return run(args.toArray(String[]::new));
    }

    private int run(String... args) {
        StringWriter said = new StringWriter();
        StringWriter complained = new StringWriter();
        int status = CommandLineRoot.run(new PrintWriter(said), new PrintWriter(complained), args);
        out = said.toString();
        err = complained.toString();
        assertThat(err).doesNotContain("\tat ");
        return status;
    }

    private Path file(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text);
    }
}
