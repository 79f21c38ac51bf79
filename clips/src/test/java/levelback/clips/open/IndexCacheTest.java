package levelback.clips.open;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import levelback.clips.corpus.FfmpegProgram;
import levelback.clips.corpus.MovingPattern;
import levelback.clips.corpus.OracleFrame;
import levelback.clips.decode.FrameReader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class IndexCacheTest {

    @TempDir
    Path folder;

    private static Path film(String name) throws Exception {
        return Path.of(IndexCacheTest.class.getResource("/corpus/" + name).toURI());
    }

    static Stream<Path> films() throws Exception {
        try (Stream<Path> files = Files.list(film("."))) {
            return files
                    .filter(file -> !file.toString().endsWith(".framemd5")
                            && !file.toString().endsWith(".frames"))
                    .sorted()
                    .toList()
                    .stream();
        }
    }

    private IndexCache cache() {
        return new IndexCache(folder.resolve("cache"));
    }

    private static Clip find(IndexCache cache, Path film) throws Exception {
        Optional<Clip> found = cache.find(film, () -> false);
        assertThat(found).isPresent();
        return found.get();
    }

    /** The frames are held against the list that the system's ffmpeg wrote, as everywhere in the corpus. */
    @ParameterizedTest
    @MethodSource("films")
    void aKnownFilmIsTheSameAsOneReadAnew(Path film) throws Exception {
        List<OracleFrame> oracle = OracleFrame.parse(
                Files.readString(Path.of(film + ".framemd5")), Files.readString(Path.of(film + ".frames")));
        for (long decodeUpTo : new long[] {0, Long.MAX_VALUE}) {
            Clip anew = Clip.open(film, decodeUpTo, cache(), () -> false);
            assertThat(cache().knows(film)).isTrue();
            Clip known = find(cache(), film);
            assertThat(known.facts()).isEqualTo(anew.facts());
            assertThat(known.index()).isEqualTo(anew.index());
            assertThat(known.decoded()).isEqualTo(anew.decoded());
            assertThat(known.threads()).isEqualTo(anew.threads());
            try (FrameReader reader = known.reader(0)) {
                for (int i = 0; i < 5; i++) {
                    int frame = i * 7919 % oracle.size();
                    assertThat(reader.md5(frame)).isEqualTo(oracle.get(frame).md5());
                }
            }
        }
    }

    @Test
    void aDamagedIndexCountsAsNone() throws Exception {
        Path film = film("h264-b-closed.mp4");
        Clip anew = Clip.open(film, 0, cache(), () -> false);
        Path kept;
        try (Stream<Path> files = Files.list(folder.resolve("cache"))) {
            kept = files.toList().get(0);
        }
        byte[] whole = Files.readAllBytes(kept);
        for (int at = 0; at < whole.length; at += 97) {
            byte[] bent = whole.clone();
            bent[at] ^= 0x10;
            Files.write(kept, bent);
            assertThat(cache().find(film, () -> false)).as("byte %d bent", at).isEmpty();
        }
        for (int length : new int[] {0, 3, 4, whole.length / 2, whole.length - 1}) {
            Files.write(kept, java.util.Arrays.copyOf(whole, length));
            assertThat(cache().find(film, () -> false)).as("cut to %d", length).isEmpty();
        }
        assertThat(Clip.open(film, 0, cache(), () -> false).facts()).isEqualTo(anew.facts());
        assertThat(find(cache(), film).facts()).isEqualTo(anew.facts());
    }

    @Test
    void nothingHalfWrittenStaysAndAFolderThatCannotBeMadeIsNoHindrance() throws Exception {
        Path film = film("h264-b-closed.mp4");
        Clip.open(film, 0, cache(), () -> false);
        try (Stream<Path> files = Files.list(folder.resolve("cache"))) {
            assertThat(files.map(file -> file.getFileName().toString()))
                    .singleElement()
                    .asString()
                    .endsWith("-mp4.index");
        }
        Path file = Files.writeString(folder.resolve("file"), "in the way");
        IndexCache blocked = new IndexCache(file.resolve("cache"));
        assertThat(Clip.open(film, 0, blocked, () -> false).facts().frameCount())
                .isEqualTo(75);
        assertThat(blocked.knows(film)).isFalse();
    }

    @Test
    void aMovedFilmIsKnownAndADecodedOneIsAskedForWhereThatIsWanted() throws Exception {
        Path film = Files.copy(film("h264-b-closed.mp4"), folder.resolve("a.mp4"));
        assertThat(Clip.open(film, 0, cache(), () -> false).decoded()).isFalse();
        assertThat(Clip.open(film, Long.MAX_VALUE, cache(), () -> false).decoded())
                .isTrue();
        Path moved = Files.move(film, folder.resolve("b.MP4"));
        Files.setLastModifiedTime(moved, FileTime.fromMillis(1_000_000_000_000L));
        Clip known = find(cache(), moved);
        assertThat(known.facts().file()).isEqualTo(moved);
        assertThat(known.decoded()).isTrue();
        assertThat(Clip.open(moved, 0, cache(), () -> false).decoded()).isTrue();
    }

    /**
     * A change that the fingerprint does not see (it looks at three pieces of the file): the index is taken from the cache
     * although the file could no longer be read that way, no wrong picture is given out, and the index is forgotten.
     */
    @Test
    void aPictureThatIsNoLongerTheOneOfTheIndexIsNotGivenOut() throws Exception {
        Path film = folder.resolve("long.mkv");
        FfmpegProgram.ofPreset()
                .encode(
                        MovingPattern.yuv420p(1280, 720, 50),
                        1280,
                        720,
                        "25",
                        film,
                        "-c:v",
                        "mjpeg",
                        "-pix_fmt",
                        "yuvj420p",
                        "-q:v",
                        "1",
                        "-vf",
                        "noise=alls=60:allf=t");
        assertThat(Files.size(film)).as("more than the three pieces").isGreaterThan(8L << 20);
        Clip anew = Clip.open(film, Long.MAX_VALUE, cache(), () -> false);
        FileTime touched = Files.getLastModifiedTime(film);
        byte[] bytes = Files.readAllBytes(film);
        for (int at = 1 << 20; at < bytes.length / 2 - (1 << 20); at += 10_007) {
            bytes[at] ^= 0x20;
        }
        Files.write(film, bytes);
        Files.setLastModifiedTime(film, touched);
        Clip known = find(cache(), film);
        assertThat(known.facts()).isEqualTo(anew.facts());
        try (FrameReader reader = known.reader(0)) {
            int bent = known.index().frames().size() / 4;
            ClipException gone = catchThrowableOfType(ClipException.class, () -> reader.md5(bent));
            assertThat(gone.reason()).isEqualTo(ClipException.Reason.UNREADABLE_FRAME);
            assertThat(reader.md5(49)).hasSize(32);
        }
        assertThat(cache().knows(film)).isFalse();
    }
}
