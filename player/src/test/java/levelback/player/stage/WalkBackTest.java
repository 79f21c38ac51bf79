package levelback.player.stage;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import levelback.clips.decode.Span;
import levelback.clips.open.Clip;
import levelback.player.stage.FrameFeed.Shown;
import org.bytedeco.javacpp.Loader;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * Walks back, frame by frame, through films of 250 frames from key to key. Every frame has its number in its pixels: nine
 * squares, black or white, that outlive the coding.
 */
@Timeout(120)
class WalkBackTest {

    private static final int BITS = 9;
    private static final int SQUARE = 16;
    private static final int WIDTH = BITS * SQUARE;
    private static final int FRAMES = 510;
    private static final int GROUP = 250;

    @TempDir
    static Path folder;

    private static Clip clip;

    @BeforeAll
    static void film() throws Exception {
        Path film = folder.resolve("numbers.mp4");
        String program = Loader.load(org.bytedeco.ffmpeg.ffmpeg.class);
        List<String> command = List.of(
                program,
                "-v",
                "error",
                "-y",
                "-f",
                "rawvideo",
                "-pix_fmt",
                "yuv420p",
                "-s",
                WIDTH + "x" + SQUARE,
                "-r",
                "25",
                "-i",
                "-",
                "-c:v",
                "mpeg4",
                "-q:v",
                "2",
                "-bf",
                "2",
                "-g",
                String.valueOf(GROUP),
                "-sc_threshold",
                "1000000000",
                "file:" + film);
        Process process = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start();
        try (OutputStream in = process.getOutputStream()) {
            for (int frame = 0; frame < FRAMES; frame++) {
                in.write(picture(frame));
            }
        }
        assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
        assertThat(process.exitValue()).isZero();
        clip = Clip.open(film, 0, () -> false);
        assertThat(clip.index().frames()).hasSize(FRAMES);
        assertThat(clip.index().frames().stream().filter(frame -> frame.keyFrame()))
                .as("keys")
                .hasSizeLessThanOrEqualTo(FRAMES / GROUP + 1);
    }

    private static byte[] picture(int number) {
        byte[] yuv = new byte[WIDTH * SQUARE * 3 / 2];
        java.util.Arrays.fill(yuv, (byte) 128);
        for (int y = 0; y < SQUARE; y++) {
            for (int x = 0; x < WIDTH; x++) {
                boolean white = ((number >> (x / SQUARE)) & 1) == 1;
                yuv[y * WIDTH + x] = (byte) (white ? 235 : 16);
            }
        }
        return yuv;
    }

    /** The number in the pixels of what came for a frame. */
    private static int numberIn(Shown shown) {
        assertThat(shown).isInstanceOf(Shown.Ready.class);
        Picture picture = ((Shown.Ready) shown).picture();
        ByteBuffer bgra = picture.bgra();
        int number = 0;
        for (int bit = 0; bit < BITS; bit++) {
            int green = bgra.get(4 * (SQUARE / 2 * WIDTH + bit * SQUARE + SQUARE / 2) + 1) & 0xFF;
            number |= green > 127 ? 1 << bit : 0;
        }
        picture.release();
        return number;
    }

    private static Shown await(FrameFeed feed, int frame) throws InterruptedException {
        while (true) {
            Optional<Shown> shown = feed.poll(System.nanoTime());
            if (shown.isPresent() && shown.get().frame() == frame) {
                return shown.get();
            }
            if (shown.isPresent() && shown.get() instanceof Shown.Ready ready) {
                ready.picture().release();
            }
            Thread.sleep(1);
        }
    }

    @Test
    void everyStepBackShowsTheFrameBefore() throws Exception {
        try (FrameFeed feed = new FrameFeed(FrameSource.of(clip), "test")) {
            for (int frame = FRAMES - 1; frame >= 0; frame--) {
                feed.show(frame);
                assertThat(numberIn(await(feed, frame))).isEqualTo(frame);
            }
            for (int frame : new int[] {1, 251, 249, 250, 5, 4, 499, 498}) {
                feed.show(frame);
                assertThat(numberIn(await(feed, frame))).isEqualTo(frame);
            }
        }
    }

    @Test
    void aPassAndTheOneAfterItAreShownAsTheyAre() throws Exception {
        try (FrameFeed feed = new FrameFeed(FrameSource.of(clip), "test")) {
            feed.passes(Optional.of(new Span(100, 180)), Optional.of(new Span(300, 400)));
            for (int frame : new int[] {100, 180, 140, 139, 138, 300, 400, 399, 100}) {
                feed.show(frame);
                assertThat(numberIn(await(feed, frame))).isEqualTo(frame);
            }
        }
    }

    @Test
    void playsBackwardsThroughAKey() throws Exception {
        try (FrameFeed feed = new FrameFeed(FrameSource.of(clip), "test")) {
            feed.walk(260, new Walk(-4, 240, 260, false));
            int before = 261;
            while (before > 240) {
                Optional<Shown> shown = feed.poll(System.nanoTime());
                if (shown.isPresent() && shown.get() instanceof Shown.Ended) {
                    break;
                }
                if (shown.isPresent()) {
                    int frame = shown.get().frame();
                    assertThat(frame).isLessThan(before);
                    assertThat(numberIn(shown.get())).isEqualTo(frame);
                    before = frame;
                }
                Thread.sleep(1);
            }
            assertThat(before).isEqualTo(240);
        }
    }
}
