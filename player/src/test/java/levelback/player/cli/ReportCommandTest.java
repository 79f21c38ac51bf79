package levelback.player.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import levelback.store.book.Books;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Bad input of the report and demo commands: one sentence, status 2, nothing made. */
class ReportCommandTest {

    @TempDir
    Path temp;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int run(String... args) {
        return CommandLineRoot.run(new PrintWriter(out, true), new PrintWriter(err, true), args);
    }

    private void saysOneSentence(String about) {
        assertThat(out.toString()).isEmpty();
        assertThat(err.toString().lines()).hasSize(1).allMatch(line -> line.contains(about));
    }

    @Test
    void aBookThatIsNotThere() {
        assertThat(run(
                        "report",
                        "--book",
                        temp.resolve("no.levelback").toString(),
                        "--out",
                        temp.resolve("o").toString()))
                .isEqualTo(2);
        saysOneSentence("no.levelback");
        assertThat(temp.resolve("o")).doesNotExist();
    }

    @Test
    void anEmptyBook() {
        Path book = temp.resolve("empty.levelback");
        Books.create(book).close();
        assertThat(run(
                        "report",
                        "--book",
                        book.toString(),
                        "--out",
                        temp.resolve("o").toString()))
                .isEqualTo(2);
        saysOneSentence("holds no herd yet");
        assertThat(temp.resolve("o")).doesNotExist();
    }

    @Test
    void aDayThatIsNoDay() {
        assertThat(run("report", "--book", "b", "--out", "o", "--visit", "14.3.2026"))
                .isEqualTo(2);
        saysOneSentence("14.3.2026");
    }

    @Test
    void aDemoFolderThatHoldsSomething() throws Exception {
        Files.writeString(temp.resolve("mine.txt"), "mine");
        assertThat(run("demo", "--dir", temp.toString(), "--no-window")).isEqualTo(2);
        saysOneSentence("--replace");
        assertThat(temp.resolve("mine.txt")).hasContent("mine");
    }
}
