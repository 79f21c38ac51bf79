package levelback.player.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.stream.Stream;
import levelback.clips.look.FirstLook;
import levelback.clips.look.LookLimits;
import levelback.clips.open.ClipException;
import levelback.clips.open.ClipException.Reason;
import levelback.clips.write.FilmWriter;
import org.bytedeco.javacpp.BytePointer;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OpenRecordingTest {

    @TempDir
    Path folder;

    private UserFolder user;
    private Path film;

    @BeforeEach
    void make() throws Exception {
        user = new UserFolder(folder.resolve("home"));
        film = folder.resolve("film.mp4");
        Instant at = Instant.parse("2026-03-14T05:30:00Z");
        try (FilmWriter writer = new FilmWriter(film, FilmWriter.Kind.MPEG4_IN_MP4, 64, 48, 25, 1, at);
                BytePointer picture = new BytePointer(3L * 64 * 48)) {
            for (int i = 0; i < 5; i++) {
                writer.write(picture.fill(40 * i));
            }
            writer.finish();
        }
    }

    private static FirstLook refusing() {
        return new FirstLook(
                new LookLimits(Duration.ofSeconds(20), Duration.ofSeconds(60), Duration.ZERO, 2L << 30, 10));
    }

    private long remembered() throws Exception {
        Path looked = user.cache().resolve("looked-at");
        if (!Files.exists(looked)) {
            return 0;
        }
        try (Stream<Path> files = Files.walk(looked)) {
            return files.filter(Files::isRegularFile).count();
        }
    }

    @Test
    void aFileThatTheFirstLookRefusesIsNotOpenedAndNotRemembered() throws Exception {
        try (OpenRecording opener = new OpenRecording(user, refusing())) {
            ClipException said = catchThrowableOfType(ClipException.class, () -> opener.open(film, () -> false));
            assertThat(said).hasMessageContaining(film + " are 64 by 48");
        }
        assertThat(remembered()).isZero();
    }

    @Test
    void aHarmlessFileIsLookedAtOnceWhereverItIsMoved() throws Exception {
        try (OpenRecording opener = new OpenRecording(user, new FirstLook(LookLimits.USUAL))) {
            assertThat(opener.open(film, () -> false).facts().frameCount()).isEqualTo(5);
        }
        assertThat(remembered()).isEqualTo(1);
        Path moved = Files.move(film, folder.resolve("moved.mp4"));
        try (OpenRecording opener = new OpenRecording(user, refusing())) {
            assertThat(opener.open(moved, () -> false).facts().frameCount()).isEqualTo(5);
        }
    }

    @Test
    void aMissingFileIsSaidToBeMissing() {
        try (OpenRecording opener = new OpenRecording(user, refusing())) {
            ClipException said = catchThrowableOfType(
                    ClipException.class, () -> opener.open(folder.resolve("none.mp4"), () -> false));
            assertThat(said.reason()).isEqualTo(Reason.NOT_A_FILE);
        }
    }
}
