package levelback.store.book.internal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import levelback.store.book.Book;
import levelback.store.book.BookCheck;
import levelback.store.book.Books;
import levelback.store.book.Sample;
import levelback.store.book.StoreException;
import levelback.store.herd.Cow;
import levelback.store.herd.Herd;
import levelback.store.herd.Person;
import levelback.store.herd.Score;
import levelback.store.herd.Visit;
import levelback.store.schema.Schema;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BookFileTest {

    @TempDir
    Path folder;

    @Test
    void everyConnectionHasTheSettingsOfTheBook() {
        try (Book book = Books.create(folder.resolve("a.levelback"))) {
            // 2 is FULL (sqlite.org, PRAGMA synchronous).
            assertThat(((SqliteBook) book).settings())
                    .containsExactly(
                            "journal_mode=wal",
                            "synchronous=2",
                            "foreign_keys=1",
                            "busy_timeout=5000",
                            "journal_mode=wal",
                            "synchronous=2",
                            "foreign_keys=1",
                            "busy_timeout=5000");
        }
    }

    @Test
    void everyTableIsStrictAndOfTheBook() throws Exception {
        Path file = folder.resolve("a.levelback");
        Books.create(file).close();
        try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement s = c.createStatement()) {
            assertThat(s.executeQuery("SELECT count(*) FROM pragma_table_list WHERE type = 'table' AND strict = 0"
                                    + " AND schema = 'main' AND name NOT LIKE 'sqlite%'")
                            .getInt(1))
                    .isZero();
            assertThat(s.executeQuery("PRAGMA application_id").getInt(1)).isEqualTo(Schema.APPLICATION_ID);
            assertThat(s.executeQuery("PRAGMA user_version").getInt(1)).isEqualTo(1);
        }
    }

    @Test
    void theFileItselfRefusesToForgetAScore() {
        Path file = folder.resolve("a.levelback");
        aBookWithOneScore(file);
        for (String sql : List.of(
                "DELETE FROM score",
                "UPDATE score SET level = 0",
                "DELETE FROM change",
                "UPDATE change SET now = '{}'")) {
            assertThatThrownBy(() -> run(file, sql)).as(sql).hasMessageContaining("never");
        }
    }

    @Test
    void aBookOfANewerVersionIsRefusedAndNotTouched() throws IOException {
        Path file = folder.resolve("new.levelback");
        aBookWithOneScore(file);
        run(file, "PRAGMA user_version = 7");
        byte[] before = Files.readAllBytes(file);
        assertThatThrownBy(() -> Books.open(file))
                .isInstanceOf(StoreException.class)
                .hasMessage(
                        "The book new.levelback was written by a newer Levelback (schema 7, this one knows 1): update"
                                + " Levelback to open it; nothing was changed.");
        assertThatThrownBy(() -> Books.openOrCreate(file)).isInstanceOf(StoreException.class);
        assertThat(Files.readAllBytes(file)).isEqualTo(before);
        assertThat(names()).containsExactly("new.levelback");
    }

    @Test
    void whatIsNoBookIsSaidInASentence() throws IOException {
        Path text = Files.writeString(folder.resolve("list.levelback"), "cow,date,score\n412,2026-03-14,2\n");
        Path database = folder.resolve("other.db");
        run(database, "CREATE TABLE t (a)");
        Path empty = Files.createFile(folder.resolve("empty.levelback"));
        for (Path file : List.of(text, database, empty)) {
            byte[] before = Files.readAllBytes(file);
            assertThatThrownBy(() -> Books.open(file))
                    .isInstanceOf(StoreException.class)
                    .hasMessage(file + " is not a Levelback book; choose another file.");
            assertThat(Files.readAllBytes(file)).isEqualTo(before);
        }
        assertThatThrownBy(() -> Books.open(folder.resolve("none.levelback")))
                .hasMessage("There is no book " + folder.resolve("none.levelback") + "; check the name, or make one.");
        assertThatThrownBy(() -> Books.open(folder)).hasMessageContaining("is not a file");
        assertThatThrownBy(() -> Books.create(text)).hasMessageContaining("is there already");
        assertThatThrownBy(() -> Books.openOrCreate(folder)).isInstanceOf(StoreException.class);
    }

    @Test
    void aBookMayHaveAnyName() {
        Path file = folder.resolve("Kühe 100% #1 ?mode=ro.levelback");
        aBookWithOneScore(file);
        assertThat(Files.exists(file)).isTrue();
        try (Book book = Books.open(file)) {
            assertThat(book.check().counts().scores()).isEqualTo(1);
        }
    }

    @Test
    void aDamagedBookIsSaidInASentence() throws IOException {
        Path file = folder.resolve("torn.levelback");
        aBookWithOneScore(file);
        try (RandomAccessFile raw = new RandomAccessFile(file.toFile(), "rw")) {
            for (long at = 4096; at < raw.length(); at += 4096) {
                raw.seek(at);
                raw.write(new byte[64]);
            }
        }
        assertThatThrownBy(() -> {
                    try (Book book = Books.open(file)) {
                        book.herd().herds();
                    }
                })
                .isInstanceOf(StoreException.class)
                .hasMessageContaining("torn.levelback is damaged");
    }

    @Test
    void aBookCutShortIsSaidInASentence() throws IOException {
        Path file = folder.resolve("short.levelback");
        aBookWithOneScore(file);
        try (RandomAccessFile raw = new RandomAccessFile(file.toFile(), "rw")) {
            raw.setLength(raw.length() / 2);
        }
        assertThatThrownBy(() -> {
                    try (Book book = Books.open(file)) {
                        book.herd().herds();
                        BookCheck check = book.check();
                        throw new StoreException(String.join(" ", check.problems()));
                    }
                })
                .isInstanceOf(StoreException.class)
                .hasMessageContaining("damaged");
    }

    @Test
    void aPlaceThatCannotBeWrittenIsSaidInASentence() throws IOException {
        Path aFile = Files.createFile(folder.resolve("file"));
        assertThatThrownBy(() -> Books.create(aFile.resolve("a.levelback")))
                .isInstanceOf(StoreException.class)
                .hasMessageContaining("choose another one");
        Path system = Path.of("/proc/levelback");
        Assumptions.assumeTrue(Files.isDirectory(Path.of("/proc")), "no /proc on this system");
        assertThatThrownBy(() -> Books.create(system.resolve("a.levelback")))
                .isInstanceOf(StoreException.class)
                .hasMessageContaining("choose another one");
    }

    @Test
    void aReadOnlyFolderIsSaidInASentence() throws IOException {
        Path locked = Files.createDirectory(folder.resolve("locked"));
        aBookWithOneScore(locked.resolve("a.levelback"));
        assertThat(locked.toFile().setWritable(false)).isTrue();
        try {
            Assumptions.assumeFalse(Files.isWritable(locked), "the system's administrator may write everywhere");
            assertThatThrownBy(() -> Books.create(locked.resolve("b.levelback")))
                    .isInstanceOf(StoreException.class)
                    .hasMessageContaining("may not be written");
            assertThatThrownBy(() -> {
                        try (Book book = Books.open(locked.resolve("a.levelback"))) {
                            book.herd().put(Sample.person("Anna"));
                        }
                    })
                    .isInstanceOf(StoreException.class);
        } finally {
            assertThat(locked.toFile().setWritable(true)).isTrue();
        }
    }

    @Test
    void aFullDiskCostsTheEntryAndNothingElse() {
        Path file = folder.resolve("full.levelback");
        aBookWithOneScore(file);
        List<Person> acknowledged = new ArrayList<>();
        try (Book book = Books.open(file)) {
            SqliteBook sqlite = (SqliteBook) book;
            sqlite.limitPages(sqlite.pages() + 3);
            assertThatThrownBy(() -> {
                        for (int i = 0; i < 10_000; i++) {
                            Person person = Sample.person("Someone with a rather long name, number " + i);
                            book.herd().put(person);
                            acknowledged.add(person);
                        }
                    })
                    .isInstanceOf(StoreException.class)
                    .hasMessage("There is no room left for the book full.levelback: this entry was not written and"
                            + " nothing else was lost; free some space and enter it again.");
            assertThat(acknowledged).isNotEmpty();
            assertThat(book.herd().people()).containsAll(acknowledged).hasSize(acknowledged.size() + 1);
            sqlite.limitPages(1_000_000);
            Person after = Sample.person("After room was made");
            book.herd().put(after);
            acknowledged.add(after);
        }
        try (Book book = Books.open(file)) {
            assertThat(book.herd().people()).containsAll(acknowledged).hasSize(acknowledged.size() + 1);
            assertThat(book.check().problems()).isEmpty();
        }
    }

    @Test
    void anotherProgramThatWritesIsWaitedForAndThenSaid() throws Exception {
        Path file = folder.resolve("a.levelback");
        aBookWithOneScore(file);
        try (Book book = Books.open(file);
                Connection other = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement s = other.createStatement()) {
            s.executeUpdate("BEGIN IMMEDIATE");
            long start = System.nanoTime();
            assertThat(book.herd().people()).as("reading goes on").hasSize(1);
            assertThatThrownBy(() -> book.herd().put(Sample.person("Late")))
                    .isInstanceOf(StoreException.class)
                    .hasMessageContaining("Another program is writing");
            assertThat((System.nanoTime() - start) / 1_000_000).isGreaterThan(4000);
            s.executeUpdate("ROLLBACK");
            book.herd().put(Sample.person("In time"));
            assertThat(book.herd().people()).hasSize(2);
        }
    }

    @Test
    void twoDesksOnOneBookSeeEachOther() {
        Path file = folder.resolve("a.levelback");
        try (Book one = Books.create(file);
                Book two = Books.open(file)) {
            Person anna = Sample.person("Anna");
            Person ben = Sample.person("Ben");
            one.herd().put(anna);
            long revision = two.revision();
            two.herd().put(ben);
            assertThat(one.herd().people()).containsExactly(anna, ben);
            assertThat(one.revision()).isGreaterThan(revision);
            assertThat(one.undo("Anna")).contains("Person Ben");
            assertThat(two.herd().people()).containsExactly(anna);
        }
    }

    @Test
    void twoBooksDoNotMix() {
        try (Book one = Books.create(folder.resolve("one.levelback"));
                Book two = Books.create(folder.resolve("two.levelback"))) {
            one.herd().put(Sample.person("Anna"));
            assertThat(two.herd().people()).isEmpty();
            assertThat(two.undo("x")).isEmpty();
        }
    }

    @Test
    void aClosedBookSaysSo() {
        Book book = Books.create(folder.resolve("a.levelback"));
        book.close();
        book.close();
        assertThatThrownBy(() -> book.herd().herds()).hasMessage("The book a.levelback is closed.");
        assertThatThrownBy(() -> book.herd().put(Sample.person("Anna"))).hasMessage("The book a.levelback is closed.");
    }

    @Test
    void aBookOfSchema1StillOpens() throws Exception {
        Path file = fixture("schema-1.sql");
        try (Book book = Books.open(file)) {
            Herd herd = book.herd().herds().get(0);
            assertThat(herd.name()).isEqualTo("Fixture Farm");
            List<Cow> cows = book.herd().cows(herd.id(), LocalDate.of(2026, 3, 14));
            assertThat(cows).extracting(Cow::number).containsExactly("0412", "0500");
            List<Score> scores = book.herd().scoresOf(herd.id());
            assertThat(scores).extracting(Score::level).containsExactly(3.0);
            assertThat(book.trim()
                            .cardsOf(cows.get(0).id())
                            .get(0)
                            .feet()
                            .get(0)
                            .findings())
                    .extracting(f -> f.lesion())
                    .containsExactly("SU");
            assertThat(book.check().ok()).isTrue();
            assertThat(book.undo("x")).isPresent();
        }
    }

    @Test
    void anOlderBookIsBroughtUpToDateAfterACopy() throws Exception {
        Path file = fixture("schema-1.sql");
        Schema next = new Schema(List.of(
                Schema.ofThisBuild().scripts().get(0),
                "ALTER TABLE person ADD COLUMN pseudonym TEXT; CREATE TABLE yard (n INTEGER PRIMARY KEY) STRICT;"));
        BookFile book = new BookFile(file, next, Clock.systemUTC());
        book.bringUpToDate(book.requireBook());
        assertThat(book.requireBook()).isEqualTo(2);
        List<String> copies =
                names().stream().filter(n -> n.endsWith(".backup")).toList();
        assertThat(copies).hasSize(1);
        try (Book copy = Books.open(folder.resolve(copies.get(0)))) {
            assertThat(copy.check().ok()).isTrue();
            assertThat(copy.check().schema()).isEqualTo(1);
            assertThat(copy.herd().herds()).hasSize(1);
        }
    }

    @Test
    void aStepUpThatFailsLeavesTheBookAsItWas() throws Exception {
        Path file = fixture("schema-1.sql");
        Schema broken = new Schema(List.of(
                Schema.ofThisBuild().scripts().get(0),
                "CREATE TABLE yard (n INTEGER PRIMARY KEY) STRICT; INSERT INTO no_such_table VALUES (1);"));
        BookFile book = new BookFile(file, broken, Clock.systemUTC());
        assertThatThrownBy(() -> book.bringUpToDate(book.requireBook())).isInstanceOf(StoreException.class);
        try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement s = c.createStatement()) {
            assertThat(s.executeQuery("PRAGMA user_version").getInt(1)).isEqualTo(1);
            assertThat(s.executeQuery("SELECT count(*) FROM sqlite_schema WHERE name = 'yard'")
                            .getInt(1))
                    .isZero();
        }
        try (Book same = Books.open(file)) {
            assertThat(same.herd().herds()).hasSize(1);
        }
    }

    @Test
    void theCheckFindsWhatIsWrong() throws Exception {
        Path file = folder.resolve("a.levelback");
        aBookWithOneScore(file);
        run(file, "UPDATE cow_number SET cow = 999");
        try (Book book = Books.open(file)) {
            BookCheck check = book.check();
            assertThat(check.ok()).isFalse();
            assertThat(check.problems())
                    .containsExactly("A row of cow_number (number 1) belongs to a row of cow that is not there.");
            assertThat(check.counts()).isEqualTo(new BookCheck.Counts(1, 1, 1, 0, 0, 1, 0));
        }
    }

    private static void aBookWithOneScore(Path file) {
        try (Book book = Books.create(file)) {
            Herd herd = Sample.herd("Otter Hill");
            Person anna = Sample.person("Anna");
            Cow cow = Sample.cow(herd.id(), "412");
            book.herd().put(herd);
            book.herd().put(anna);
            book.herd().put(cow, Sample.DAY);
            Visit visit = book.herd().visitOn(herd.id(), Sample.DAY);
            book.herd().put(Sample.score(cow, visit, anna, 2));
        }
    }

    /** A book remade from the text of one that an earlier build wrote. */
    private Path fixture(String name) throws IOException, SQLException {
        Path file = folder.resolve("old.levelback");
        try (var in = BookFileTest.class.getResourceAsStream(name)) {
            assertThat(in).as(name).isNotNull();
            run(file, new String(in.readAllBytes(), StandardCharsets.UTF_8));
        }
        return file;
    }

    private static void run(Path file, String sql) {
        try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement s = c.createStatement()) {
            s.executeUpdate(sql);
        } catch (SQLException e) {
            throw new IllegalStateException(e.getMessage(), e);
        }
    }

    private List<String> names() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(f -> f.getFileName().toString()).sorted().toList();
        }
    }
}
