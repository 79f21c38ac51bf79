package levelback.clips.write;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import levelback.clips.corpus.FfmpegProgram;
import levelback.clips.decode.FrameReader;
import levelback.clips.index.IndexedFrame;
import levelback.clips.open.Clip;
import levelback.clips.open.ClipException;
import levelback.clips.open.ClipException.Reason;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Films that were cut out, held against their sources by the preset's own ffprobe and ffmpeg. */
class CutClipTest {

    private static final FfmpegProgram FFMPEG = FfmpegProgram.ofPreset();

    @TempDir
    Path folder;

    private static Path film(String name) throws Exception {
        return Path.of(CutClipTest.class.getResource("/corpus/" + name).toURI());
    }

    private static String probe(Path film, String entries) {
        FfmpegProgram probe = new FfmpegProgram(FFMPEG.program().resolveSibling("ffprobe"));
        List<String> arguments = List.of(
                "-v", "error", "-select_streams", "v:0", "-show_entries", entries, "-of", "csv=p=0", "file:" + film);
        return new String(probe.run(arguments, new byte[0], false), StandardCharsets.UTF_8);
    }

    /** Times of the frames in seconds. */
    private static List<Double> times(Path film) {
        return probe(film, "frame=pts_time")
                .lines()
                .map(line -> line.split(",", 2)[0])
                .filter(line -> !line.isBlank())
                .map(Double::parseDouble)
                .toList();
    }

    private CutClip.Cut cut(Clip clip, double from, double to, Path out) throws Exception {
        return CutClip.write(clip, from, to, Overlay.NONE, out, done -> {}, () -> false);
    }

    @ParameterizedTest
    @CsvSource({
        "h264-variable.mp4, .5, 2",
        "h264-variable.mkv, .5, 2",
        "h264-vfr-us.mp4, .3, 1.1",
        "h264-vfr-ms.mkv, 0, 9",
        "h264-gap.mp4, 0, 9",
        "h264-late.mkv, 1, 2",
        "h264-wrap.ts, .5, 1.5",
        "mpeg4-packed.avi, .2, 1",
        "h264-b-raw.h264, .4, 1.2",
        "h264-joined-back.ts, 0, 99",
        "h264-one.mp4, 0, 1",
        "h264-edit-open.mp4, .1, .5",
        "hevc-variable.mov, 1, 2.5",
    })
    void framesAndTheirTimesAreThoseOfTheSource(String name, double from, double to) throws Exception {
        Clip clip = Clip.open(film(name), () -> false);
        Path out = folder.resolve("out.mp4");
        CutClip.Cut cut = cut(clip, from, to, out);
        List<IndexedFrame> source = clip.index().frames();
        long startUs = source.get(0).timeUs();
        List<Double> expected = new ArrayList<>();
        for (int i = 0; i < source.size(); i++) {
            double starts = (source.get(i).timeUs() - startUs) / 1e6;
            boolean onShow = i + 1 == source.size() || (source.get(i + 1).timeUs() - startUs) / 1e6 > from;
            if (starts < to && onShow) {
                expected.add(
                        (source.get(i).timeUs() - source.get(cut.firstFrame()).timeUs()) / 1e6);
            }
        }
        List<Double> found = times(out);
        assertThat(found).hasSameSizeAs(expected).hasSize(cut.frames());
        for (int i = 0; i < found.size(); i++) {
            assertThat(found.get(i))
                    .as("frame %d", i)
                    .isCloseTo(expected.get(i), within(name.contains("joined") ? 0.002 : 0.000_05 + 0.000_02 * i));
        }
        String end = probe(out, "format=duration").strip();
        assertThat(Double.parseDouble(end)).isCloseTo(cut.durationUs() / 1e6, within(0.001));
    }

    @Test
    void timeStampsAreKeptToTheTick() throws Exception {
        Clip clip = Clip.open(film("h264-variable.mp4"), () -> false);
        Path out = folder.resolve("out.mp4");
        CutClip.Cut cut = cut(clip, 0, 99, out);
        assertThat(probe(out, "stream=time_base").strip())
                .isEqualTo(clip.facts().timeBase().toString());
        List<Long> found = probe(out, "frame=pts")
                .lines()
                .filter(line -> !line.isBlank())
                .map(line -> Long.parseLong(line.split(",", 2)[0]))
                .toList();
        long first = clip.index().frames().get(0).pts().orElseThrow();
        assertThat(found)
                .isEqualTo(clip.index().frames().stream()
                        .map(frame -> frame.pts().orElseThrow() - first)
                        .toList());
        assertThat(cut.frames()).isEqualTo(clip.facts().frameCount());
    }

    /** All pictures upright, with square pixels, as ffmpeg itself makes them: limited range, 4:2:0. */
    private static byte[] pictures(Path film, int width, int height) {
        String filter = "scale=%d:%d:flags=bicubic:out_range=tv,format=yuv420p,crop=%d:%d:0:0"
                .formatted(width, height, width / 2 * 2, height / 2 * 2);
        return FFMPEG.run(
                List.of(
                        "-v",
                        "error",
                        "-i",
                        "file:" + film,
                        "-map",
                        "0:V:0",
                        "-vf",
                        filter,
                        "-fps_mode",
                        "passthrough",
                        "-f",
                        "rawvideo",
                        "-"),
                new byte[0],
                true);
    }

    /** Peak signal to noise, in dB: 10 log10(255² / mean squared error). */
    private static double psnr(byte[] one, int oneFrom, byte[] other, int otherFrom, int bytes) {
        double squares = 0;
        for (int i = 0; i < bytes; i++) {
            double apart = (one[oneFrom + i] & 0xFF) - (other[otherFrom + i] & 0xFF);
            squares += apart * apart;
        }
        return 10 * Math.log10(255.0 * 255 * bytes / Math.max(1, squares));
    }

    @ParameterizedTest
    @CsvSource({
        "h264-b-closed.mp4, 160, 90, bt470bg",
        "h264-turned.mp4, 90, 160, bt470bg",
        "h264-turned-back.mp4, 90, 160, bt470bg",
        "h264-turned-over.mp4, 160, 90, bt470bg",
        "h264-wide-pixels.mp4, 213, 90, bt470bg",
        "h264-odd-444.mp4, 97, 65, bt470bg",
        "vp9-odd.webm, 97, 65, bt470bg",
        "h264-full-range.mp4, 96, 64, bt470bg",
        "mjpeg-odd.mkv, 97, 65, bt470bg",
        "h264-422-10-intra.mov, 96, 64, bt470bg"
    })
    void picturesLookLikeTheSourceUprightAndSquare(String name, int width, int height, String matrix) throws Exception {
        Clip clip = Clip.open(film(name), () -> false);
        Path out = folder.resolve("out.mp4");
        CutClip.Cut cut = cut(clip, 0.2, 0.8, out);
        assertThat(List.of(cut.width(), cut.height())).isEqualTo(List.of(width, height));
        assertThat(probe(out, "stream=codec_name,width,height,sample_aspect_ratio,pix_fmt,color_range,color_space")
                        .strip())
                .isEqualTo("h264,%d,%d,1:1,yuv420p,tv,%s".formatted(width + width % 2, height + height % 2, matrix));
        byte[] source = pictures(film(name), width, height);
        byte[] coded = pictures(out, width + width % 2, height + height % 2);
        int even = width / 2 * 2 * (height / 2 * 2) * 3 / 2;
        int codedBytes = (width + width % 2) * (height + height % 2) * 3 / 2;
        assertThat(coded).hasSize(cut.frames() * codedBytes);
        if (width % 2 == 0 && height % 2 == 0) {
            for (int i = 0; i < cut.frames(); i++) {
                assertThat(psnr(source, (cut.firstFrame() + i) * even, coded, i * even, even))
                        .as("frame %d", i)
                        .isGreaterThan(36);
            }
        } else {
            int odd = width + width % 2;
            for (int i = 0; i < cut.frames(); i++) { // the rows of Y that both have
                double sum = 0;
                for (int y = 0; y < height / 2 * 2; y++) {
                    int from = (cut.firstFrame() + i) * even + y * (width / 2 * 2);
                    sum += psnr(source, from, coded, i * codedBytes + y * odd, width / 2 * 2);
                }
                assertThat(sum / (height / 2 * 2)).as("frame %d", i).isGreaterThan(33);
            }
        }
    }

    @Test
    void theOverlayIsLaidOverTheRightFrames() throws Exception {
        Clip clip = Clip.open(film("h264-b-closed.mp4"), () -> false);
        ByteBuffer white = ByteBuffer.allocateDirect(4 * 40 * 20);
        for (int i = 0; i < white.capacity(); i++) {
            white.put(i, (byte) 255);
        }
        Path out = folder.resolve("out.mp4");
        Overlay overlay = (frame, afterUs) -> {
            assertThat(afterUs).isEqualTo(frame * 40_000L);
            return frame == 12 ? List.of(new Overlay.Layer(-8, 80, 40, 20, white)) : List.of();
        };
        CutClip.Cut cut = CutClip.write(clip, 0.4, 0.6, overlay, out, done -> {}, () -> false);
        assertThat(cut.firstFrame()).isEqualTo(10);
        Clip again = Clip.open(out, () -> false);
        try (FrameReader reader = again.reader()) {
            for (int i = 0; i < 5; i++) {
                int corner = 4 * (160 * 85 + 16);
                int green = Still.upright(again, reader, i).get(corner + 1) & 0xFF;
                if (i == 2) {
                    assertThat(green).isGreaterThan(235);
                } else {
                    assertThat(green).isLessThan(235);
                }
            }
        }
    }

    private List<Path> left() throws Exception {
        try (Stream<Path> files = Files.list(folder)) {
            return files.toList();
        }
    }

    @Test
    void stoppedOrFailedItLeavesWhatWasThere() throws Exception {
        Clip clip = Clip.open(film("h264-b-closed.mp4"), () -> false);
        Path out = Files.writeString(folder.resolve("out.mp4"), "what was there");
        AtomicInteger frames = new AtomicInteger();
        ClipException stopped = catchThrowableOfType(
                ClipException.class,
                () -> CutClip.write(clip, 0, 9, Overlay.NONE, out, done -> {}, () -> frames.incrementAndGet() > 20));
        assertThat(stopped.reason()).isEqualTo(Reason.CANCELLED);
        assertThat(out).hasContent("what was there");
        assertThat(left()).containsExactly(out);
        ClipException late = catchThrowableOfType(ClipException.class, () -> cut(clip, 3, 9, out));
        assertThat(late.reason()).isEqualTo(Reason.PAST_THE_END);
        Path nowhere = folder.resolve("none").resolve("out.mp4");
        ClipException lost = catchThrowableOfType(ClipException.class, () -> cut(clip, 0, 1, nowhere));
        assertThat(lost.reason()).isEqualTo(Reason.CANNOT_WRITE);
        assertThat(lost.getMessage())
                .startsWith(nowhere + " could not be written; check")
                .doesNotContain(".part");
        assertThat(left()).containsExactly(out);
    }

    @Test
    void whatAKilledProgramLeftIsSweptAway() throws Exception {
        Process done = new ProcessBuilder("true").start();
        done.waitFor();
        Files.writeString(folder.resolve(".levelback-" + done.pid() + "-123.part"), "half");
        Path alive = Files.writeString(
                folder.resolve(".levelback-" + ProcessHandle.current().pid() + "-123.part"), "half");
        Path out = folder.resolve("out.mp4");
        cut(Clip.open(film("h264-one.mp4"), () -> false), 0, 1, out);
        assertThat(left()).containsExactlyInAnyOrder(out, alive);
    }
}
