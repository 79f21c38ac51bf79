package levelback.player.shell;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import levelback.player.desk.Fx;
import levelback.player.desk.NeedsDesk;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@NeedsDesk
class WalkTest {

    @TempDir
    Path folder;

    @Test
    void theWholeJobOnceInANewBook() throws Exception {
        Fx.start();
        try (Walk walk = new Walk(folder)) {
            walk.all();
        }
    }

    /** The same on a real X server: GTK, X11 and the window itself are in it. */
    @Test
    @Tag("slow")
    void theWholeJobOnceOnAScreen() throws Exception {
        Path xvfb = Path.of("/usr/bin/xvfb-run");
        Assumptions.assumeTrue(Files.isExecutable(xvfb), "SKIPPED: xvfb-run is not installed (Debian: xvfb xauth)");
        Optional<String> missing = SystemLibraries.missing(SystemLibraries.folders(System.getenv()), true);
        Assumptions.assumeTrue(missing.isEmpty(), () -> "SKIPPED: " + missing.orElse(""));
        Path said = folder.resolve("said.txt");
        ProcessBuilder builder = new ProcessBuilder(
                xvfb.toString(),
                "-a",
                "-s",
                "-screen 0 1600x1000x24",
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Dprism.order=sw",
                "-cp",
                System.getProperty("java.class.path"),
                Walk.class.getName(),
                folder.toString());
        builder.environment().remove("WAYLAND_DISPLAY");
        Process walk =
                builder.redirectErrorStream(true).redirectOutput(said.toFile()).start();
        boolean ended = walk.waitFor(4, TimeUnit.MINUTES);
        if (!ended) {
            walk.descendants().forEach(ProcessHandle::destroyForcibly);
            walk.destroyForcibly();
        }
        assertThat(ended).as("the walk ends: %s", Files.readString(said)).isTrue();
        assertThat(walk.exitValue()).as(Files.readString(said)).isZero();
    }
}
