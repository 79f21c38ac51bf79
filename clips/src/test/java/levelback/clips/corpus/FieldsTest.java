package levelback.clips.corpus;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import levelback.clips.decode.Field;
import levelback.clips.decode.FrameReader;
import levelback.clips.open.Clip;
import levelback.clips.write.Still;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Fields of interlaced films against {@code separatefields} of the preset's own ffmpeg, which gives them in time. */
class FieldsTest {

    private static final FfmpegProgram FFMPEG = FfmpegProgram.ofPreset();

    /** Packed pictures, field after field. */
    private static List<String> separated(Path film) {
        String list = new String(
                FFMPEG.run(
                        List.of(
                                "-v",
                                "error",
                                "-i",
                                "file:" + film,
                                "-map",
                                "0:V:0",
                                "-vf",
                                "separatefields",
                                "-fps_mode",
                                "passthrough",
                                "-f",
                                "framemd5",
                                "-"),
                        new byte[0],
                        true),
                StandardCharsets.UTF_8);
        return list.lines()
                .filter(line -> !line.startsWith("#"))
                .map(line -> line.substring(line.lastIndexOf(',') + 1).strip())
                .toList();
    }

    private static boolean topFirst(Path film) {
        List<String> probe = List.of(
                "-v",
                "error",
                "-select_streams",
                "V:0",
                "-show_entries",
                "frame=top_field_first",
                "-of",
                "csv=p=0",
                "file:" + film);
        FfmpegProgram beside = new FfmpegProgram(FFMPEG.program().resolveSibling("ffprobe"));
        return new String(beside.run(probe, new byte[0], false), StandardCharsets.UTF_8).startsWith("1");
    }

    @ParameterizedTest
    @ValueSource(strings = {"h264-interlaced.ts", "h264-mbaff.mp4", "h264-mbaff-bff.mkv", "mpeg2-interlaced.ts"})
    void everyFieldIsTheOneThatFfmpegSeparates(String name) throws Exception {
        Path film = CorpusTest.film(name);
        List<String> fields = separated(film);
        Clip clip = Clip.open(film, () -> false);
        assertThat(fields).hasSize(2 * clip.facts().frameCount());
        try (FrameReader reader = clip.reader()) {
            for (int frame = clip.facts().frameCount() - 1; frame >= 0; frame--) {
                Field first = reader.firstField(frame);
                Field second = first == Field.TOP ? Field.BOTTOM : Field.TOP;
                assertThat(reader.md5(frame, first)).as("first of %d", frame).isEqualTo(fields.get(2 * frame));
                assertThat(reader.md5(frame, second)).as("second of %d", frame).isEqualTo(fields.get(2 * frame + 1));
            }
            assertThat(reader.firstField(0)).isEqualTo(topFirst(film) ? Field.TOP : Field.BOTTOM);
        }
    }

    @Test
    void theSecondFieldIsHalfAFrameLater() throws Exception {
        Clip clip = Clip.open(CorpusTest.film("h264-mbaff.mp4"), () -> false);
        long at = clip.index().frames().get(7).timeUs();
        assertThat(Still.fieldTimeUs(clip, 7, Field.TOP)).isEqualTo(at);
        assertThat(Still.fieldTimeUs(clip, 7, Field.BOTTOM)).isEqualTo(at + 20_000); // 25 frames a second
        int last = clip.facts().frameCount() - 1;
        assertThat(Still.fieldTimeUs(clip, last, Field.BOTTOM))
                .isEqualTo(clip.index().frames().get(last).timeUs() + 20_000);
    }

    @Test
    void linesOfTheFieldStandWhereTheyStoodAndTheOthersLieBetween() throws Exception {
        Clip clip = Clip.open(CorpusTest.film("h264-mbaff.mp4"), () -> false);
        int width = clip.facts().width();
        int height = clip.facts().height();
        try (FrameReader reader = clip.reader()) {
            for (Field field : Field.values()) {
                ByteBuffer picture = ByteBuffer.allocateDirect(4 * width * height);
                reader.readBgra(9, field, picture, 4 * width);
                int first = field == Field.TOP ? 0 : 1;
                for (int y = first + 1; y + 1 < height; y += 2) {
                    for (int i = 0; i < 4 * width; i++) {
                        int above = picture.get((y - 1) * 4 * width + i) & 0xFF;
                        int below = picture.get((y + 1) * 4 * width + i) & 0xFF;
                        assertThat(picture.get(y * 4 * width + i) & 0xFF).isEqualTo((above + below + 1) / 2);
                    }
                }
                // Luma of its lines is that of the whole frame: grey of a white to black ramp within rounding of
                // chroma.
                ByteBuffer whole = ByteBuffer.allocateDirect(4 * width * height);
                reader.readBgra(9, whole, 4 * width);
                long apart = 0;
                for (int y = first; y < height; y += 2) {
                    for (int i = 0; i < 4 * width; i++) {
                        apart += Math.abs(
                                (picture.get(y * 4 * width + i) & 0xFF) - (whole.get(y * 4 * width + i) & 0xFF));
                    }
                }
                assertThat(apart / (2.0 * width * height))
                        .as("mean difference, chroma apart")
                        .isLessThan(12);
            }
        }
    }
}
