package levelback.clips.decode.internal;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BooleanSupplier;
import java.util.function.DoubleConsumer;
import levelback.clips.decode.Span;
import levelback.clips.open.ClipException;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.global.avutil;

/**
 * Decodes a recording whose frames are known by their packets alone, from its start to its end, and holds what comes out
 * against that. Every picture's check sum goes into the order at once, so that readers at work use it. Can be stopped and
 * goes on where it was: from the key packet before, proving on the frames between that this leads to the same pictures.
 */
public final class Verification {

    /** How it ended. */
    public enum Outcome {
        /** Every frame came out as the packets said, without a complaint of the decoder. */
        CONFIRMED,
        /** Packets and frames differ, or something is damaged: the order has to be taken from a full decode. */
        DIFFERS,
        /** Stopped; what was found so far stays. */
        STOPPED
    }

    private final FrameOrder order;
    private final boolean interlaced;
    private final BooleanSupplier cancelled;
    private final AVFrame picture = avutil.av_frame_alloc();
    private final Planes planes = new Planes();
    private final DecodeRun run;
    /** Frames that were decoded from a key packet first, with that packet's place in the list of keys. */
    private final Map<Integer, Integer> tentative = new HashMap<>();

    private Verification(Path file, FrameOrder order, int threads, boolean interlaced, BooleanSupplier cancelled)
            throws ClipException {
        this.order = order;
        this.interlaced = interlaced;
        this.cancelled = cancelled;
        this.run = new DecodeRun(file, order, threads, cancelled);
    }

    /**
     * Runs until it has ended or is stopped.
     *
     * @param interlaced what the frames seen so far say of themselves
     * @param first spans that are wanted first
     * @param cancelled polled between pictures; may wait while others need the machine
     * @param progress is told the fraction of frames that are certain, about every hundredth
     */
    public static Outcome run(
            Path file,
            FrameOrder order,
            int threads,
            boolean interlaced,
            List<Span> first,
            BooleanSupplier cancelled,
            DoubleConsumer progress)
            throws ClipException {
        Verification verification = new Verification(file, order, threads, interlaced, cancelled);
        try {
            for (Span span : first) {
                verification.inAdvance(span);
            }
            return verification.throughout(progress);
        } finally {
            verification.close();
        }
    }

    private void close() {
        run.close();
        planes.close();
        avutil.av_frame_free(picture);
    }

    private void inAdvance(Span span) {
        int last = Math.min(span.last(), order.frames() - 1);
        int key = span.first() >= order.frames() ? -1 : order.keyFor(span.first(), new java.util.BitSet());
        if (key < 0 || !run.seekTo(key)) {
            return;
        }
        for (int frame = 0; frame < last && !cancelled.getAsBoolean(); ) {
            frame = run.next(picture);
            if (frame == DecodeRun.OVER) {
                return;
            }
            if (span.has(frame) && !order.checks().known(frame)) {
                order.checks().putTentative(frame, planes.check(picture));
                tentative.put(frame, key);
            }
            avutil.av_frame_unref(picture);
        }
    }

    private Outcome throughout(DoubleConsumer progress) throws ClipException {
        int known = order.checks().knownFromStart();
        int key = known == 0 ? -1 : order.keyFor(known - 1, new java.util.BitSet());
        if (key >= 0 && run.seekTo(key)) {
            Outcome resumed = from(order.keyShows(key), known, progress);
            if (resumed != Outcome.DIFFERS) {
                return resumed;
            }
        }
        run.restart();
        return from(0, 0, progress);
    }

    /**
     * Goes on to the end.
     *
     * @param expected number of the frame that should come out first
     * @param known frames below this have their check sum already and must have it again
     */
    private Outcome from(int expected, int known, DoubleConsumer progress) {
        int errors = run.errors();
        int strangers = run.strangers();
        int step = Math.max(1, order.frames() / 100);
        int next = expected;
        while (true) {
            if (cancelled.getAsBoolean()) {
                return Outcome.STOPPED;
            }
            int frame = run.next(picture);
            if (frame == DecodeRun.OVER) {
                boolean whole = next == order.frames() && run.errors() == errors && run.strangers() == strangers;
                return cancelled.getAsBoolean() ? Outcome.STOPPED : whole ? Outcome.CONFIRMED : Outcome.DIFFERS;
            }
            boolean fits = frame == next && run.strangers() == strangers && asFlagged(frame) && put(frame, known);
            avutil.av_frame_unref(picture);
            if (!fits) {
                return Outcome.DIFFERS;
            }
            next++;
            if (next % step == 0) {
                progress.accept((double) next / order.frames());
            }
        }
    }

    private boolean asFlagged(int frame) {
        int flags = picture.flags();
        return (flags & FrameDecoder.FLAG_CORRUPT) == 0
                && picture.decode_error_flags() == 0
                && ((flags & FrameDecoder.FLAG_KEY) != 0) == order.key(frame)
                && ((flags & FrameDecoder.FLAG_INTERLACED) == 0 || interlaced);
    }

    private boolean put(int frame, int known) {
        int crc = planes.check(picture);
        if (frame < known) {
            return order.checks().allows(frame, crc);
        }
        Integer key = tentative.get(frame);
        if (key != null && !order.checks().allows(frame, crc)) {
            order.strikeOut(key);
        }
        order.checks().put(frame, crc);
        return true;
    }
}
