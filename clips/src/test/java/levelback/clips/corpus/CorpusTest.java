package levelback.clips.corpus;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import levelback.clips.open.Clip;
import levelback.clips.open.ClipFacts;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The films under {@code corpus} (made by {@code src/test/corpus/make-corpus.sh} with Debian's ffmpeg, libx264 and
 * libx265), every frame in every order against the framemd5 lists that the same ffmpeg wrote beside them.
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
                    .filter(name -> !name.endsWith(".framemd5"))
                    .sorted()
                    .toList()
                    .stream();
        }
    }

    static List<OracleFrame> oracle(Path film) throws Exception {
        return OracleFrame.parse(Files.readString(film.resolveSibling(film.getFileName() + ".framemd5")));
    }

    @ParameterizedTest
    @MethodSource("films")
    void everyFrameInAnyOrderIsTheOneOfADecodeFromTheStart(String name) throws Exception {
        Path film = film(name);
        List<OracleFrame> oracle = oracle(film);
        assertThat(oracle).as("frames in the list").hasSizeGreaterThan(20);
        FrameCheck.holdAgainst(film, oracle);
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

    @Test
    void namesTheDamage() throws Exception {
        assertThat(facts("h264-b-closed.mp4").damage()).isEmpty();
        assertThat(facts("h264-b-open.ts").damage()).isEmpty();
        assertThat(facts("h264-edit-list.mp4").damage()).isEmpty();
        assertThat(facts("h264-intra-refresh.mkv").damage()).isEmpty();
        assertThat(facts("hevc-cut.mkv").damage())
                .anySatisfy(span -> assertThat(span.what()).contains("cut off"));
        assertThat(facts("h264-mid-group.ts").damage())
                .anySatisfy(span -> assertThat(span.what()).contains("before the file begins"));
    }

    @Test
    void aStreamWithoutTimeStampsHasNone() throws Exception {
        Clip raw = Clip.open(film("h264-b-raw.h264"), () -> false);
        assertThat(raw.index().frames())
                .allSatisfy(frame -> assertThat(frame.pts()).isEmpty());
        assertThat(raw.index().frames().get(10).timeUs()).isEqualTo(400_000); // 25 a second
    }
}
