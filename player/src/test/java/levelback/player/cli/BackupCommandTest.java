package levelback.player.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A backup and the way back, as typed. */
class BackupCommandTest {

    @TempDir
    Path folder;

    private Path book;

    @BeforeEach
    void fill() throws Exception {
        book = folder.resolve("farm.levelback");
        Path scores = Files.writeString(folder.resolve("s.csv"), "cow,date,score\n12,2026-03-14,2\n13,2026-03-14,0\n");
        assertThat(run(
                                "import",
                                "--book",
                                book.toString(),
                                "--kind",
                                "scores",
                                "--scale",
                                "mobility-0-3",
                                scores.toString())
                        .status())
                .isZero();
    }

    private record Answer(int status, String out, String err) {}

    private static Answer run(String... args) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int status = CommandLineRoot.run(new PrintWriter(out), new PrintWriter(err), args);
        return new Answer(status, out.toString(), err.toString());
    }

    @Test
    void aBackupComesBackAndThePresentBookIsKept() throws Exception {
        Answer made = run(
                "backup", "--book", book.toString(), "--to", folder.resolve("b").toString(), "--json");
        assertThat(made.status()).as(made.err()).isZero();
        assertThat(made.out()).contains("\"backup\"", "\"scores\" : 2", "\"why\" : \"newest\"", "\"removed\"");
        Path copy;
        try (var files = Files.list(folder.resolve("b"))) {
            copy = files.findFirst().orElseThrow();
        }
        Path more = Files.writeString(folder.resolve("m.csv"), "cow,date,score\n14,2026-03-14,3\n");
        run("import", "--book", book.toString(), "--kind", "scores", more.toString());
        Answer restored = run("backup", "--book", book.toString(), "--restore", copy.toString(), "--json");
        assertThat(restored.status()).as(restored.err()).isZero();
        assertThat(restored.out()).contains("\"keptAs\" : \"", "\"scores\" : 2");
        assertThat(run("check", "--book", book.toString(), "--json").out()).contains("\"scores\":2");
    }

    @Test
    void whatCannotBeDoneIsOneSentence() throws Exception {
        Path file = Files.writeString(folder.resolve("file"), "in the way");
        for (Answer wrong : new Answer[] {
            run("backup", "--book", book.toString()),
            run("backup", "--book", folder.resolve("no.levelback").toString(), "--to", folder.toString()),
            run("backup", "--book", book.toString(), "--restore", file.toString()),
            run("backup", "--book", book.toString(), "--to", folder.toString(), "--keep", "0"),
        }) {
            assertThat(wrong.status()).isEqualTo(2);
            assertThat(wrong.err().strip().lines()).hasSize(1);
        }
        Answer blocked = run(
                "backup", "--book", book.toString(), "--to", file.resolve("sub").toString());
        assertThat(blocked.status()).isEqualTo(1);
        assertThat(blocked.err().strip().lines()).hasSize(1);
    }
}
