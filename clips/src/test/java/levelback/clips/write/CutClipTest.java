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
                expected.add((source.get(i).timeUs() - source.get(cut.firstFrame()).timeUs()) / 1e6);
            }
        }
        List<Double> found = times(out);
        assertThat(found).hasSameSizeAs(expected).hasSize(cut.frames());
        for (int i = 0; i < found.size(); i++) {
            assertThat(found.get(i)).as("frame %d", i).isCloseTo(expected.get(i), within(0.000_05 + 0.000_02 * i));
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

    /** Peak signal to noise over all bytes, in dB: 10 log10(255² / mean squared error). */
    private static double psnr(ByteBuffer one, ByteBuffer other, int pixels) {
        double squares = 0;
        for (int i = 0; i < 4 * pixels; i++) {
            if (i % 4 != 3) {
                double apart = (one.get(i) & 0xFF) - (other.get(i) & 0xFF);
                squares += apart * apart;
            }
        }
        return 10 * Math.log10(255 * 255 / (squares / (3.0 * pixels)));
    }

    @ParameterizedTest
    @CsvSource({
        "h264-b-closed.mp4, 160, 90, 30",
        "h264-turned.mp4, 90, 160, 30",
        "h264-wide-pixels.mp4, 213, 90, 30",
        "h264-odd-444.mp4, 97, 65, 25",
        "h264-full-range.mp4, 96, 64, 28",
        "h264-422-10-intra.mov, 96, 64, 28"
    })
    void picturesLookLikeTheSourceUprightAndSquare(String name, int width, int height, double leastDb)
            throws Exception {
        Clip clip = Clip.open(film(name), () -> false);
        Path out = folder.resolve("out.mp4");
        CutClip.Cut cut = cut(clip, 0.2, 1, out);
        assertThat(List.of(cut.width(), cut.height())).isEqualTo(List.of(width, height));
        Clip again = Clip.open(out, () -> false);
        assertThat(again.facts().width()).isEqualTo(width + width % 2);
        assertThat(again.facts().height()).isEqualTo(height + height % 2);
        assertThat(again.facts().sampleAspectRatio()).isEqualTo("1:1");
        assertThat(probe(out, "stream=codec_name,pix_fmt,color_range,color_space").strip())
                .isEqualTo("h264,yuv420p,tv,smpte170m");
        int wide = again.facts().width();
        try (FrameReader from = clip.reader();
                FrameReader to = again.reader()) {
            for (int i = 0; i < cut.frames(); i++) {
                ByteBuffer source = Still.upright(clip, from, cut.firstFrame() + i);
                ByteBuffer coded = Still.upright(again, to, i);
                ByteBuffer cropped = ByteBuffer.allocateDirect(4 * width * height);
                for (int y = 0; y < height; y++) {
                    cropped.put(4 * width * y, coded, 4 * wide * y, 4 * width);
                }
                assertThat(psnr(source, cropped, width * height))
                        .as("frame %d", i)
                        .isGreaterThan(leastDb);
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
        assertThat(lost.getMessage()).startsWith(nowhere + " could not be written; check").doesNotContain(".part");
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
