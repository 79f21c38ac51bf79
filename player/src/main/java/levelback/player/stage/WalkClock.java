package levelback.player.stage;

import java.util.function.IntToLongFunction;

/**
 * When each frame of a walk is due, by the stream's own times: a recording of uneven rate walks as unevenly as the cow was
 * filmed. Starts when the first frame is there, and starts again at each lap, so that looking up the first frame costs a
 * pause and no pictures. Confined to one thread.
 */
final class WalkClock {

    private static final long UNSET = Long.MIN_VALUE;

    /** What the last frame of a walk stays for if it is the only one. */
    private static final long LONE_FRAME_US = 40_000;

    /** A stream's times can jump; no frame stays longer than this at the cow's own pace. */
    private static final long LONGEST_US = 2_000_000;

    private final IntToLongFunction timeUs;
    private final Walk walk;
    private int frame;
    private long dueNanos = UNSET;

    /** When the lap before is over: a new lap may be decoded ahead of that. */
    private long lapEndNanos = UNSET;

    WalkClock(IntToLongFunction timeUs, Walk walk, int from) {
        this.timeUs = timeUs;
        this.walk = walk;
        this.frame = from;
    }

    int frame() {
        return frame;
    }

    /** When the present frame is due; the first frame of a lap is due now. */
    long dueNanos(long nowNanos) {
        if (dueNanos == UNSET) {
            dueNanos = lapEndNanos != UNSET && lapEndNanos - nowNanos > 0 ? lapEndNanos : nowNanos;
        }
        return dueNanos;
    }

    /** When the walk is over: the last frame has stayed its time. */
    long endNanos() {
        return dueNanos == UNSET ? UNSET : dueNanos + stayNanos();
    }

    /** Passes over frames whose successor is due already; never over the last of the span. Returns how many. */
    int skipLate(long nowNanos) {
        int skipped = 0;
        while (dueNanos != UNSET && !atEnd() && dueNanos + stayNanos() - nowNanos <= 0) {
            dueNanos += stayNanos();
            frame += walk.rate() > 0 ? 1 : -1;
            skipped++;
        }
        return skipped;
    }

    /** Goes to the next frame; false if the walk is over. */
    boolean advance() {
        if (atEnd()) {
            if (!walk.loop()) {
                return false;
            }
            if (walk.first() == walk.last()) {
                return false;
            }
            lapEndNanos = dueNanos + stayNanos();
            frame = walk.rate() > 0 ? walk.first() : walk.last();
            dueNanos = UNSET;
            return true;
        }
        dueNanos += stayNanos();
        frame += walk.rate() > 0 ? 1 : -1;
        return true;
    }

    private boolean atEnd() {
        return walk.rate() > 0 ? frame >= walk.last() : frame <= walk.first();
    }

    private long stayNanos() {
        int next = frame + (walk.rate() > 0 ? 1 : -1);
        long stayUs;
        if (next < walk.first() || next > walk.last()) {
            int before = frame - (walk.rate() > 0 ? 1 : -1);
            stayUs = before < walk.first() || before > walk.last()
                    ? LONE_FRAME_US
                    : Math.abs(timeUs.applyAsLong(frame) - timeUs.applyAsLong(before));
        } else {
            stayUs = Math.abs(timeUs.applyAsLong(next) - timeUs.applyAsLong(frame));
        }
        return (long) (Math.min(stayUs, LONGEST_US) * 1_000 / Math.abs(walk.rate()));
    }
}
