package levelback.player.work;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import levelback.clips.decode.Span;
import levelback.clips.open.Clip;
import levelback.clips.open.IndexCache;
import levelback.clips.write.FilmWriter;
import org.bytedeco.javacpp.BytePointer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class VerifyInBackgroundTest {

    @TempDir
    Path folder;

    @Test
    void aClipIndexedByItsPacketsBecomesCertainAndIsKnownSo() throws Exception {
        Path film = folder.resolve("walk.mp4");
        Instant at = Instant.parse("2026-03-14T05:30:00Z");
        try (FilmWriter writer = new FilmWriter(film, FilmWriter.Kind.MPEG4_IN_MP4, 64, 48, 25, 1, at);
                BytePointer picture = new BytePointer(3L * 64 * 48)) {
            for (int i = 0; i < 40; i++) {
                writer.write(picture.fill(5 * i));
            }
            writer.finish();
        }
        IndexCache indexes = new IndexCache(folder.resolve("cache"));
        Clip quick = Clip.open(film, 0, indexes, () -> false);
        assertThat(quick.decoded()).isFalse();
        CompletableFuture<Clip> found = new CompletableFuture<>();
        try (VerifyInBackground verifying = new VerifyInBackground(indexes)) {
            verifying.touch();
            verifying.verify(quick, new Span(10, 20), found::complete);
            Clip certain = found.get(60, TimeUnit.SECONDS);
            assertThat(certain.decoded()).isTrue();
            assertThat(certain.index()).isEqualTo(quick.index());
        }
        assertThat(Clip.known(film, Long.MAX_VALUE, indexes, () -> false)).isPresent();
    }
}
