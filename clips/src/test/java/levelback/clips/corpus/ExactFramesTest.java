package levelback.clips.corpus;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every frame of films that the preset's own program encodes, in shuffled order and backwards, against that program's
 * {@code framemd5} of a decode from the start (and Debian's where it is installed).
 */
class ExactFramesTest {

    private static final int WIDTH = 144;
    private static final int HEIGHT = 80;
    private static final int FRAMES = 75;

    @TempDir
    static Path folder;

    static final FfmpegProgram PRESET = FfmpegProgram.ofPreset();
    static byte[] pictures;

    @BeforeAll
    static void draw() {
        pictures = MovingPattern.yuv420p(WIDTH, HEIGHT, FRAMES);
    }

    record Film(String name, List<String> options) {
        @Override
        public String toString() {
            return name;
        }
    }

    private static final List<String> MPEG4_B = List.of("-c:v", "mpeg4", "-bf", "2", "-g", "25", "-q:v", "5");
    private static final List<String> MPEG2_B =
            List.of("-c:v", "mpeg2video", "-bf", "2", "-g", "15", "-q:v", "5", "-sc_threshold", "1000000000");
    private static final List<String> MJPEG = List.of("-c:v", "mjpeg", "-q:v", "5", "-pix_fmt", "yuvj420p");
    private static final List<String> VP9 = List.of(
            "-c:v",
            "libvpx-vp9",
            "-g",
            "30",
            "-b:v",
            "200k",
            "-auto-alt-ref",
            "1",
            "-lag-in-frames",
            "16",
            "-deadline",
            "realtime",
            "-cpu-used",
            "8");
    private static final List<String> VP8 = List.of(
            "-c:v",
            "libvpx",
            "-g",
            "30",
            "-b:v",
            "200k",
            "-auto-alt-ref",
            "1",
            "-lag-in-frames",
            "16",
            "-deadline",
            "good",
            "-cpu-used",
            "5");
    private static final List<String> H264 = List.of("-c:v", "libopenh264", "-g", "20", "-b:v", "300k");
    private static final List<String> VARIABLE =
            List.of("-vf", "select='not(eq(mod(n,7),3))*not(eq(mod(n,11),5))'", "-fps_mode", "vfr");

    static Stream<Film> films() {
        List<Film> films = new ArrayList<>();
        record Coded(String codec, List<String> options, List<String> containers) {}
        for (Coded coded : List.of(
                new Coded("mpeg4", MPEG4_B, List.of("mp4", "mov", "mkv", "avi", "ts")),
                new Coded("mpeg2", MPEG2_B, List.of("ts", "mkv", "mov")),
                new Coded("mjpeg", MJPEG, List.of("mov", "mkv", "avi", "mp4")),
                new Coded("vp9", VP9, List.of("webm", "mkv", "mp4")),
                new Coded("vp8", VP8, List.of("webm")),
                new Coded("h264", H264, List.of("mp4", "mov", "mkv", "ts", "avi", "h264")))) {
            for (String container : coded.containers()) {
                films.add(new Film(coded.codec() + "-constant." + container, coded.options()));
                if (!container.equals("avi") && !container.equals("h264")) {
                    films.add(new Film(coded.codec() + "-variable." + container, join(coded.options(), VARIABLE)));
                }
            }
        }
        films.add(new Film(
                "dv.dv", List.of("-s", "720x576", "-aspect", "4:3", "-pix_fmt", "yuv420p", "-c:v", "dvvideo")));
        films.add(new Film("mjpeg.mjpg", join(MJPEG, List.of("-f", "mpjpeg"))));
        films.add(new Film("vp9.ivf", VP9));
        films.add(new Film("mpeg4-fields.avi", join(MPEG4_B, List.of("-flags", "+ilme+ildct"))));
        films.add(new Film("mpeg2-raw.m2v", MPEG2_B));
        return films.stream();
    }

    private static List<String> join(List<String> one, List<String> two) {
        List<String> both = new ArrayList<>(one);
        both.addAll(two);
        return both;
    }

    @ParameterizedTest
    @MethodSource("films")
    void everyFrameInAnyOrderIsTheOneOfADecodeFromTheStart(Film film) throws Exception {
        Path file = folder.resolve(film.name());
        PRESET.encode(pictures, WIDTH, HEIGHT, "25", file, film.options().toArray(String[]::new));
        List<OracleFrame> oracle = PRESET.frames(file);
        assertThat(oracle).as("the oracle decodes it").hasSizeGreaterThan(40);
        FrameCheck.holdAgainst(file, oracle);
        if (FfmpegProgram.ofSystem().isPresent()) {
            assertThat(FfmpegProgram.ofSystem().get().frames(file).stream().map(OracleFrame::md5))
                    .as("Debian's program agrees")
                    .isEqualTo(oracle.stream().map(OracleFrame::md5).toList());
        }
    }
}
