package levelback.clips.corpus;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import levelback.clips.decode.FrameReader;
import levelback.clips.open.Clip;
import levelback.clips.open.ClipFacts;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The films under {@code corpus} (made by {@code src/test/corpus/make-corpus.sh} with Debian's ffmpeg, libx264 and
 * libx265), every frame in every order against the framemd5 lists that the same ffmpeg wrote beside them, its time stamp
 * and key flag against ffprobe's.
 */
class CorpusTest {

    static Path film(String name) {
        try {
            return Path.of(CorpusTest.class.getResource("/corpus/" + name).toURI());
        } catch (java.net.URISyntaxException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    static Stream<String> films() throws Exception {
        try (Stream<Path> files = Files.list(film("."))) {
            return files
                    .map(file -> file.getFileName().toString())
                    .filter(name -> !name.endsWith(".framemd5") && !name.endsWith(".frames"))
                    .sorted()
                    .toList()
                    .stream();
        }
    }

    static List<OracleFrame> oracle(Path film) throws Exception {
        return OracleFrame.parse(
                Files.readString(film.resolveSibling(film.getFileName() + ".framemd5")),
                Files.readString(film.resolveSibling(film.getFileName() + ".frames")));
    }

    @Test
    void holdsEveryKindOfFilm() throws Exception {
        assertThat(films()).hasSizeGreaterThanOrEqualTo(100);
        for (String kind : List.of("h264", "hevc", "vp8", "vp9", "av1", "mpeg1", "mpeg2", "mpeg4", "mjpeg", "prores")) {
            assertThat(films()).as(kind).anyMatch(name -> name.startsWith(kind));
        }
    }

    @ParameterizedTest
    @MethodSource("films")
    void everyFrameInAnyOrderIsTheOneOfADecodeFromTheStart(String name) throws Exception {
        Path film = film(name);
        List<OracleFrame> oracle = oracle(film);
        assertThat(oracle).as("frames in the list").isNotEmpty();
        FrameCheck.holdAgainst(film, oracle);
    }

    @Test
    void aStreamThatChangesItsSizeGivesEveryPictureAsCodedAndShowsItInTheFirstSize(@TempDir Path folder)
            throws Exception {
        FfmpegProgram preset = FfmpegProgram.ofPreset();
        Path large = folder.resolve("large.ts");
        Path small = folder.resolve("small.ts");
        preset.encode(MovingPattern.yuv420p(144, 80, 20), 144, 80, "25", large, "-c:v", "mpeg2video", "-g", "10");
        preset.encode(MovingPattern.yuv420p(192, 112, 20), 192, 112, "25", small, "-c:v", "mpeg2video", "-g", "10");
        Path both = folder.resolve("both.ts");
        Files.write(both, Files.readAllBytes(large));
        Files.write(both, Files.readAllBytes(small), java.nio.file.StandardOpenOption.APPEND);
        List<String> apart = Stream.concat(preset.frames(large).stream(), preset.frames(small).stream())
                .map(OracleFrame::md5)
                .toList();
        Clip clip = Clip.open(both, () -> false);
        // FFmpeg's program loses a picture at the join too; it prints the others scaled, so they are held against the
        // parts.
        int count = preset.frames(both).size();
        assertThat(clip.facts().frameCount()).isEqualTo(count).isBetween(39, 40);
        ByteBuffer picture = ByteBuffer.allocateDirect(4 * 144 * 80);
        String[] read = new String[count];
        try (FrameReader reader = clip.reader(0)) {
            for (int frame = count - 1; frame >= 0; frame--) {
                read[frame] = reader.md5(frame);
                reader.readBgra(frame, picture, 4 * 144);
            }
        }
        assertThat(apart).containsSubsequence(read);
    }

    /** An IVF file is a head of 32 bytes, then for each frame its length (4 bytes), its stamp (8) and its data. */
    @Test
    void aStampThousandsOfYearsAwayIsNone(@TempDir Path folder) throws Exception {
        byte[] bytes = Files.readAllBytes(film("vp9-422-10.ivf"));
        ByteBuffer ivf = ByteBuffer.wrap(bytes).order(java.nio.ByteOrder.LITTLE_ENDIAN);
        int at = 32;
        for (int i = 0; i < 5; i++) {
            at += 12 + ivf.getInt(at);
        }
        ivf.putLong(at + 4, Long.MAX_VALUE - 9);
        Clip clip = Clip.open(Files.write(folder.resolve("absurd.ivf"), bytes), () -> false);
        assertThat(clip.facts().frameCount()).isEqualTo(40);
        assertThat(clip.index().frames().get(39).timeUs()).isLessThan(10_000_000);
    }

    private static ClipFacts facts(String name) throws Exception {
        return Clip.open(film(name), () -> false).facts();
    }

    @Test
    void saysTurnPixelShapeAndWhenItWasRecorded() throws Exception {
        // ffmpeg's own autorotation of this film gives the picture of its transpose=cclock; StillTest holds both
        // against it.
        assertThat(facts("h264-turned.mp4").rotationDegrees()).isEqualTo(270);
        assertThat(facts("h264-turned-back.mp4").rotationDegrees()).isEqualTo(90);
        assertThat(facts("h264-turned-over.mp4").rotationDegrees()).isEqualTo(180);
        assertThat(facts("h264-turned.mp4").recordedAt()).contains(java.time.Instant.parse("2026-03-14T05:30:00Z"));
        assertThat(facts("h264-turned.mp4").uprightWidth()).isEqualTo(90);
        ClipFacts wide = facts("h264-wide-pixels.mp4");
        assertThat(wide.sampleAspectRatio()).isEqualTo("4:3");
        assertThat(wide.uprightWidth()).isEqualTo(213); // 160 * 4 / 3 = 213.33
        assertThat(facts("h264-b-closed.mp4").recordedAt()).isEmpty();
    }

    @Test
    void saysInterlacedStartAndSpacing() throws Exception {
        assertThat(facts("h264-interlaced.ts").interlaced()).isTrue();
        assertThat(facts("h264-b-closed.mp4").interlaced()).isFalse();
        assertThat(facts("h264-b-closed.mp4").constantFrameRate()).isTrue();
        assertThat(facts("h264-b-closed.mp4").averageFrameRate()).isEqualTo(25);
        assertThat(facts("h264-variable.mp4").constantFrameRate()).isFalse();
        assertThat(facts("h264-variable.mkv").constantFrameRate()).isFalse();
        assertThat(facts("h264-b-open-slices.mkv").constantFrameRate()).isTrue();
        assertThat(facts("h264-late.mkv").startUs()).hasValue(7_500_000);
        assertThat(facts("h264-b-closed.mp4").durationUs()).hasValue(3_000_000);
    }

    @ParameterizedTest
    @MethodSource("films")
    void aFilmHasDamageOnlyIfSomebodyCutIt(String name) throws Exception {
        List<ClipFacts.Damage> damage =
                Clip.open(film(name), Long.MAX_VALUE, () -> false).facts().damage();
        switch (name) {
            case "hevc-cut.mkv" ->
                assertThat(damage).anySatisfy(span -> assertThat(span.what()).contains("cut off"));
            case "h264-mid-group.ts" ->
                assertThat(damage).anySatisfy(span -> assertThat(span.what()).contains("before the file begins"));
            default -> assertThat(damage).isEmpty();
        }
    }

    @Test
    void aStreamWithoutTimeStampsHasNone() throws Exception {
        Clip raw = Clip.open(film("h264-b-raw.h264"), () -> false);
        assertThat(raw.index().frames())
                .allSatisfy(frame -> assertThat(frame.pts()).isEmpty());
        assertThat(raw.index().frames().get(10).timeUs()).isEqualTo(400_000); // 25 a second
    }
}
