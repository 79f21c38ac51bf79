package levelback.player.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Nothing of the user's is ever taken away. */
class DemoFolderTest {

    @TempDir
    Path temp;

    @Test
    void refusesAFolderThatHoldsAnything() throws IOException {
        Files.writeString(temp.resolve("mine.txt"), "mine");
        assertThatThrownBy(() -> DemoFolder.open(temp, false))
                .isInstanceOf(BadInput.class)
                .hasMessageContaining("--replace");
        assertThat(temp.resolve("mine.txt")).exists();
    }

    @Test
    void replacesOnlyWhatTheDemoMade() throws IOException {
        Path folder = temp.resolve("demo");
        DemoFolder first = DemoFolder.open(folder, false);
        Files.writeString(first.file("recordings/a.mp4"), "film");
        Files.writeString(first.file("report.html"), "report");
        Files.writeString(folder.resolve("mine.txt"), "mine");
        DemoFolder.open(folder, true);
        assertThat(folder.resolve("mine.txt")).hasContent("mine");
        assertThat(folder.resolve("recordings")).doesNotExist();
        assertThat(folder.resolve("report.html")).doesNotExist();
    }

    @Test
    void leavesTheUsersOwnFileAndSaysSo() throws IOException {
        Files.writeString(temp.resolve("report.html"), "mine");
        assertThatThrownBy(() -> DemoFolder.open(temp, true))
                .isInstanceOf(BadInput.class)
                .hasMessageContaining("report.html");
        assertThat(temp.resolve("report.html")).hasContent("mine");
    }

    @Test
    void aFileAddedToTheDemosFolderStays() throws IOException {
        Path folder = temp.resolve("demo");
        DemoFolder first = DemoFolder.open(folder, false);
        Files.writeString(first.file("recordings/a.mp4"), "film");
        Files.writeString(folder.resolve("recordings/mine.mp4"), "mine");
        assertThatThrownBy(() -> DemoFolder.open(folder, true)).isInstanceOf(BadInput.class);
        assertThat(folder.resolve("recordings/mine.mp4")).hasContent("mine");
        assertThat(folder.resolve("recordings/a.mp4")).doesNotExist();
    }

    @Test
    void aListThatLeadsOutOfTheFolderIsNotFollowed() throws IOException {
        Path outside = Files.writeString(temp.resolve("outside.txt"), "mine");
        Path folder = Files.createDirectory(temp.resolve("demo"));
        Files.writeString(folder.resolve(DemoFolder.LIST), "../outside.txt\n" + outside + "\n");
        DemoFolder.open(folder, true);
        assertThat(outside).hasContent("mine");
    }

    @Test
    void clearsUpAfterAFailure() throws IOException {
        Path folder = temp.resolve("demo");
        DemoFolder demo = DemoFolder.open(folder, false);
        Files.writeString(demo.file("truth/exit/marks.csv"), "half");
        demo.clear();
        assertThat(folder).doesNotExist();
    }
}
