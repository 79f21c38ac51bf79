package levelback.clips.corpus;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import levelback.clips.open.Clip;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** H.264 of fields and frames mixed, in every shell, against the preset's own program and Debian's. */
class FieldPicturesTest {

    private static final FfmpegProgram PRESET = FfmpegProgram.ofPreset();

    @TempDir
    Path folder;

    static Stream<Arguments> films() {
        return Stream.of("h264", "ts", "mp4", "mov", "mkv", "avi")
                .flatMap(container -> Stream.of(
                        Arguments.of(container, false, false),
                        Arguments.of(container, false, true),
                        Arguments.of("h264", true, container.equals("ts"))))
                .distinct();
    }

    @ParameterizedTest(name = "{0}, B pictures {1}, one IDR {2}")
    @MethodSource("films")
    void everyFrameIsExact(String container, boolean bidirectional, boolean oneIdr) throws Exception {
        Path raw = Files.write(folder.resolve("fields.h264"), FieldFilm.annexB(3, 8, bidirectional, oneIdr));
        Path film = raw;
        if (!container.equals("h264")) {
            film = folder.resolve("fields." + container);
            List<String> shell = List.of(
                    "-v",
                    "error",
                    "-y",
                    "-r",
                    "50",
                    "-i",
                    "file:" + raw,
                    "-c",
                    "copy",
                    "-bsf:v",
                    "setts=ts=N",
                    "file:" + film);
            PRESET.run(shell, new byte[0], true);
        }
        List<OracleFrame> oracle = PRESET.frames(film);
        assertThat(oracle).hasSize(bidirectional ? 51 : 27);
        assertThat(oracle.stream().map(OracleFrame::md5).distinct().count()).isGreaterThan(20);
        Clip clip = FrameCheck.holdAgainst(film, oracle);
        assertThat(clip.facts().interlaced()).isTrue();
        assertThat(clip.facts().damage()).isEmpty();
        if (FfmpegProgram.ofSystem().isPresent()) {
            assertThat(FfmpegProgram.ofSystem().get().frames(film).stream().map(OracleFrame::md5))
                    .as("Debian's program agrees")
                    .isEqualTo(oracle.stream().map(OracleFrame::md5).toList());
        }
    }
}
