package levelback.clips.bench;

import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import levelback.clips.decode.FrameReader;
import levelback.clips.decode.internal.PacketScan;
import levelback.clips.open.Clip;
import levelback.clips.open.ClipException;
import levelback.clips.open.ClipException.Reason;

/**
 * Steps through a recording as a scorer does, and takes the time. A steady walk is one step every 40 ms (a held key on most
 * machines), the reader reading ahead in between as it does on the desk; each time is from the wish until the picture
 * stands in a buffer as BGRA.
 */
public final class StepBench {

    /** Takes note of how far it is. */
    @FunctionalInterface
    public interface Progress {
        /**
         * @param stage what is being measured
         * @param fractionDone of the whole bench, 0 to 1
         */
        void at(String stage, double fractionDone);
    }

    private static final int SEQUENCE_FRAMES = 500;
    private static final int WALK_STEPS = 300;
    private static final int SEEKS = 24;
    private static final double PLAY_SECONDS = 10;
    private static final long STEP_NANOS = TimeUnit.MILLISECONDS.toNanos(40);
    private static final long WARM_STEPS = 10;
    private static final double MILLIS = 1e6;

    private final Path file;
    private final BooleanSupplier cancelled;
    private final Progress progress;

    public StepBench(Path file, BooleanSupplier cancelled, Progress progress) {
        this.file = file;
        this.cancelled = cancelled;
        this.progress = progress;
    }

    /** Measures; takes about a minute for a long recording. */
    public StepResult run() throws ClipException {
        progress.at("index", 0);
        double indexMs = index();
        Clip clip = Clip.open(file, 0, cancelled);
        ByteBuffer bgra = ByteBuffer.allocateDirect(
                4 * clip.facts().width() * clip.facts().height());
        progress.at("in sequence", 0.05);
        double frameDecodeMs = inSequence(clip);
        progress.at("seeking", 0.2);
        Spread seek = seeking(clip, bgra);
        progress.at("stepping on", 0.4);
        Spread forward = walk(clip, bgra, 1);
        progress.at("stepping back", 0.6);
        Spread back = walk(clip, bgra, -1);
        progress.at("playing", 0.85);
        int[] play = play(clip, bgra);
        progress.at("done", 1);
        return new StepResult(
                1000 / frameDecodeMs,
                indexMs,
                forward,
                back,
                seek,
                frameDecodeMs,
                play[0],
                play[1],
                PeakMemory.mebibytes());
    }

    /** The better of two, so that loading the libraries does not count. */
    private double index() throws ClipException {
        double best = Double.MAX_VALUE;
        for (int i = 0; i < 2; i++) {
            long from = System.nanoTime();
            PacketScan.packets(file, cancelled);
            best = Math.min(best, (System.nanoTime() - from) / MILLIS);
        }
        return best;
    }

    private double inSequence(Clip clip) throws ClipException {
        int frames = Math.min(SEQUENCE_FRAMES, clip.facts().frameCount());
        int warm = (int) Math.min(WARM_STEPS, frames - 1);
        try (FrameReader reader = clip.reader(0)) {
            long from = System.nanoTime();
            for (int frame = 0; frame < frames; frame++) {
                if (frame == warm) {
                    from = System.nanoTime();
                }
                requireGoing();
                reader.decode(frame);
            }
            return (System.nanoTime() - from) / MILLIS / (frames - warm);
        }
    }

    private Spread seeking(Clip clip, ByteBuffer bgra) throws ClipException {
        Random draw = new Random(1);
        long[] nanos = new long[SEEKS];
        try (FrameReader reader = clip.reader(0)) {
            read(clip, reader, 0, bgra);
            for (int i = 0; i < SEEKS; i++) {
                int frame = draw.nextInt(clip.facts().frameCount());
                nanos[i] = read(clip, reader, frame, bgra);
            }
        }
        return Spread.ofNanos(nanos);
    }

    /** The first steps stand for arriving and are not counted. */
    private Spread walk(Clip clip, ByteBuffer bgra, int step) throws ClipException {
        int count = clip.facts().frameCount();
        int steps = Math.max(1, Math.min(WALK_STEPS, count - 1));
        int middle = count / 2 - step * (steps / 2);
        int start = Math.max(0, Math.min(count - 1, middle));
        long[] nanos = new long[steps];
        try (FrameReader reader = clip.readerOnShow(cancelled)) {
            read(clip, reader, start, bgra);
            for (int i = 0; i < steps; i++) {
                long due = System.nanoTime() + STEP_NANOS;
                while (System.nanoTime() < due && reader.ahead(() -> System.nanoTime() >= due)) {
                    requireGoing();
                }
                LockSupport.parkNanos(Math.max(0, due - System.nanoTime()));
                int frame = Math.max(0, Math.min(count - 1, start + step * (i + 1)));
                nanos[i] = read(clip, reader, frame, bgra);
            }
        }
        return Spread.ofNanos(nanos);
    }

    /** Plays by the stream's own times; a picture that is not ready when the one after it is due has been dropped. */
    private int[] play(Clip clip, ByteBuffer bgra) throws ClipException {
        int count = clip.facts().frameCount();
        long startUs = clip.index().frames().get(0).timeUs();
        int dropped = 0;
        int frame = 0;
        try (FrameReader reader = clip.readerOnShow(cancelled)) {
            read(clip, reader, 0, bgra);
            long zero = System.nanoTime();
            for (frame = 1; frame < count; frame++) {
                long atUs = clip.index().frames().get(frame).timeUs() - startUs;
                if (atUs > PLAY_SECONDS * 1e6) {
                    break;
                }
                long due = zero + TimeUnit.MICROSECONDS.toNanos(atUs);
                while (System.nanoTime() < due && reader.ahead(() -> System.nanoTime() >= due)) {
                    requireGoing();
                }
                LockSupport.parkNanos(Math.max(0, due - System.nanoTime()));
                long nextUs =
                        frame + 1 < count ? clip.index().frames().get(frame + 1).timeUs() - startUs : atUs + 40_000;
                long end = zero + TimeUnit.MICROSECONDS.toNanos(nextUs);
                if (System.nanoTime() >= end) {
                    dropped++; // so late that the next is due: not even converted
                    continue;
                }
                read(clip, reader, frame, bgra);
                dropped += System.nanoTime() > end ? 1 : 0;
            }
        }
        return new int[] {dropped, Math.max(1, frame)};
    }

    private long read(Clip clip, FrameReader reader, int frame, ByteBuffer bgra) throws ClipException {
        requireGoing();
        long from = System.nanoTime();
        reader.readBgra(frame, bgra, 4 * clip.facts().width());
        return System.nanoTime() - from;
    }

    private void requireGoing() throws ClipException {
        if (cancelled.getAsBoolean()) {
            throw new ClipException(Reason.CANCELLED, "The bench was stopped.");
        }
    }
}
