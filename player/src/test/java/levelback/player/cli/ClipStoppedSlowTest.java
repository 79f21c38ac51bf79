package levelback.player.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import levelback.clips.open.Clip;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIf;
import org.junit.jupiter.api.io.TempDir;

/** The clip command as a program of its own: interrupted, killed, and on a disk that has no room left. */
@Tag("slow")
@EnabledIf(value = "linuxToolsAreThere", disabledReason = "no /usr/bin/prlimit on this machine")
class ClipStoppedSlowTest {

    @TempDir
    Path folder;

    private Path film;
    private Path out;

    static boolean linuxToolsAreThere() {
        return Files.isExecutable(Path.of("/usr/bin/prlimit")) && Files.isExecutable(Path.of("/bin/kill"));
    }

    @BeforeEach
    void copy() throws Exception {
        film = folder.resolve("film.mp4");
        Files.copy(
                Path.of(ClipStoppedSlowTest.class
                        .getResource("/film/h264-b-closed.mp4")
                        .toURI()),
                film);
        out = Files.createDirectories(folder.resolve("out")).resolve("clip.mp4");
        Files.writeString(out, "what was there");
    }

    private Process start(String... before) throws Exception {
        List<String> command = new ArrayList<>(List.of(before));
        command.addAll(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                "levelback.player.app.Levelback",
                "clip",
                film.toString(),
                "--from",
                "0",
                "--to",
                "3",
                "--out",
                out.toString()));
        ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
        builder.environment().put("LEVELBACK_HOME", folder.resolve("home").toString());
        builder.redirectOutput(folder.resolve("said.txt").toFile());
        return builder.start();
    }

    private List<Path> parts() throws Exception {
        try (Stream<Path> files = Files.list(out.getParent())) {
            return files.filter(file -> !file.equals(out)).toList();
        }
    }

    /** Waits until it has begun to write. */
    private boolean began(Process process) throws Exception {
        while (process.isAlive()) {
            if (!parts().isEmpty()) {
                return true;
            }
            Thread.sleep(1);
        }
        return false;
    }

    @Test
    void interruptedItLeavesThePlaceAsItWas() throws Exception {
        Process process = start();
        assertThat(began(process)).isTrue();
        new ProcessBuilder("/bin/kill", "-INT", Long.toString(process.pid()))
                .start()
                .waitFor();
        assertThat(process.waitFor(30, TimeUnit.SECONDS)).isTrue();
        assertThat(process.exitValue()).isNotZero();
        assertThat(out).hasContent("what was there");
        assertThat(parts()).isEmpty();
    }

    @Test
    void killedItLeavesThePlaceAsItWasAndTheNextOneSweepsUp() throws Exception {
        Process process = start();
        assertThat(began(process)).isTrue();
        process.destroyForcibly().waitFor();
        assertThat(out).hasContent("what was there");
        assertThat(parts()).hasSize(1);
        Process again = start();
        assertThat(again.waitFor(60, TimeUnit.SECONDS)).isTrue();
        assertThat(again.exitValue())
                .as(Files.readString(folder.resolve("said.txt")))
                .isZero();
        assertThat(parts()).isEmpty();
        assertThat(Clip.open(out, () -> false).facts().frameCount()).isEqualTo(75);
    }

    @Test
    void withoutRoomItSaysSoAndLeavesThePlaceAsItWas() throws Exception {
        Process process = start("/usr/bin/prlimit", "--fsize=30000");
        assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
        String said = Files.readString(folder.resolve("said.txt"));
        assertThat(process.exitValue()).as(said).isEqualTo(1);
        assertThat(said.lines()).hasSize(1);
        assertThat(said).contains("clip.mp4 could not be written").contains("room");
        assertThat(out).hasContent("what was there");
        assertThat(parts()).isEmpty();
    }
}
