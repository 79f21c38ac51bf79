package levelback.clips.decode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import levelback.clips.open.Clip;
import levelback.clips.open.ClipException;
import org.junit.jupiter.api.Test;

/** What a reader does while nobody asks, and how it is called off: counted in decoded pictures, not in time. */
class StandingByTest {

    private static final int WIDTH = 160;
    private static final int HEIGHT = 90;

    private static Clip clip() throws Exception {
        // 75 frames, one key.
        return Clip.open(
                Path.of(StandingByTest.class
                        .getResource("/corpus/h264-one-key.mp4")
                        .toURI()),
                0,
                () -> false);
    }

    /** Counts how often it is asked, which is once for every picture decoded. */
    private static int askedFor(FrameReader reader, int frame) throws Exception {
        AtomicInteger asked = new AtomicInteger();
        reader.readBgra(frame, ByteBuffer.allocateDirect(4 * WIDTH * HEIGHT), 4 * WIDTH, () -> {
            asked.incrementAndGet();
            return false;
        });
        return asked.get();
    }

    @Test
    void steppingBackDecodesNothingOnceTheWayThereWasDecoded() throws Exception {
        try (FrameReader reader = clip().readerOnShow(() -> false)) {
            assertThat(askedFor(reader, 70)).isGreaterThan(60);
            for (int frame = 69; frame >= 0; frame--) {
                assertThat(askedFor(reader, frame))
                        .as("decoded for frame %d", frame)
                        .isZero();
            }
        }
    }

    @Test
    void aPassIsDecodedWhileNobodyAsks() throws Exception {
        try (FrameReader reader = clip().readerOnShow(() -> false)) {
            askedFor(reader, 0);
            reader.passes(Optional.of(new Span(30, 50)), Optional.of(new Span(60, 70)));
            while (reader.ahead(() -> false)) {
                assertThat(reader.bytesKept()).isPositive();
            }
            for (int frame : new int[] {70, 60, 50, 30, 41}) {
                assertThat(askedFor(reader, frame)).isZero();
            }
        }
    }

    @Test
    void calledOffItGoesOnWhereItWas() throws Exception {
        try (FrameReader reader = clip().readerOnShow(() -> false)) {
            AtomicInteger asked = new AtomicInteger();
            ClipException off = catchThrowableOfType(
                    ClipException.class,
                    () -> reader.readBgra(
                            70,
                            ByteBuffer.allocateDirect(4 * WIDTH * HEIGHT),
                            4 * WIDTH,
                            () -> asked.incrementAndGet() > 40));
            assertThat(off.reason()).isEqualTo(ClipException.Reason.CANCELLED);
            assertThat(askedFor(reader, 70)).as("decoded for the rest").isLessThan(35);
            assertThat(reader.md5(70)).isEqualTo(fresh(70));
        }
    }

    private static String fresh(int frame) throws Exception {
        try (FrameReader reader = clip().reader(0)) {
            return reader.md5(frame);
        }
    }

    @Test
    void goneMeansGone() throws Exception {
        boolean[] gone = {false};
        try (FrameReader reader = clip().readerOnShow(() -> gone[0])) {
            askedFor(reader, 3);
            gone[0] = true;
            ClipException off = catchThrowableOfType(ClipException.class, () -> reader.md5(70));
            assertThat(off.reason()).isEqualTo(ClipException.Reason.CANCELLED);
        }
    }

    @Test
    void readersShareWhatThereIs() throws Exception {
        // 75 small pictures weigh more than this; what it keeps stays within, and every frame is right.
        try (FrameReader reader = clip().reader(600_000)) {
            for (int frame = 74; frame >= 0; frame -= 5) {
                assertThat(reader.md5(frame)).isEqualTo(fresh(frame));
                assertThat(reader.bytesKept()).isLessThanOrEqualTo(600_000);
            }
        }
    }
}
