package levelback.clips.decode.internal;

import java.util.function.IntPredicate;
import levelback.clips.decode.Span;
import org.jspecify.annotations.Nullable;

/**
 * Which frame should be decoded next while nobody asks for one, and which decoded ones are to stay. In this order: the
 * frames just ahead in the way of travel, the pass being scored, the pass after it. Knows numbers only, no pictures.
 */
final class ReadAhead {

    /** Nothing is left to be decoded ahead. */
    static final int NOTHING = -1;

    /** A jump farther than this tells no way of travel. */
    private static final int STEADY = 12;

    private static final int MOST_FORWARD = 64;
    private static final int MOST_BACK = 600;
    /** Standing still, so many on either side are at hand. */
    private static final int STANDING = 8;

    /** Longer than any cow takes to walk past: not worth decoding unasked. */
    private static final int MOST_PASS_FRAMES = 3000;

    private final int frames;
    private int current;
    private int travel;
    private @Nullable Span resident;
    private @Nullable Span after;
    /** Every k-th frame of the resident pass stays. */
    private int every = 1;

    private int lastAfter = -1;
    /** Frames of the passes that stay. */
    private int kept;

    /** @param frames of the recording */
    ReadAhead(int frames) {
        this.frames = frames;
    }

    /** A frame is on show. */
    void at(int frame) {
        int way = frame - current;
        if (way != 0) {
            travel = Math.abs(way) <= STEADY ? Integer.signum(way) : 0;
        }
        current = frame;
    }

    int current() {
        return current;
    }

    /** −1 backwards, 1 forwards, 0 unknown. */
    int travel() {
        return travel;
    }

    /** Says which pass is being scored and which comes after it; a span too long for a pass is not kept. */
    void passes(@Nullable Span pass, @Nullable Span next) {
        resident = pass != null && pass.frames() > MOST_PASS_FRAMES ? null : pass;
        after = next;
    }

    /** Whether a decoded frame should stay as long as others can go. */
    boolean keeps(int frame) {
        if (Math.abs((long) frame - current) <= STANDING) {
            return true;
        }
        Span pass = resident;
        if (pass != null && pass.has(frame)) {
            return (frame - pass.first()) % every == 0;
        }
        Span next = after;
        return next != null && next.has(frame) && frame <= lastAfter;
    }

    /**
     * The frame to decode next.
     *
     * @param has whether a frame is decoded
     * @param room how many decoded frames find room in all
     */
    int next(IntPredicate has, int room) {
        portion(room);
        int near = near(has, room);
        if (near != NOTHING) {
            return near;
        }
        Span pass = resident;
        if (pass != null) {
            for (int frame = pass.first(); frame <= Math.min(pass.last(), frames - 1); frame += every) {
                if (!has.test(frame)) {
                    return frame;
                }
            }
        }
        Span next = after;
        if (next != null) {
            for (int frame = next.first(); frame <= lastAfter; frame++) {
                if (!has.test(frame)) {
                    return frame;
                }
            }
        }
        return NOTHING;
    }

    /** How much of the passes finds room beside the frames near the present one. */
    private void portion(int room) {
        int free = Math.max(1, room - room / 4 - 2 * STANDING);
        Span pass = resident;
        every = pass == null ? 1 : Math.max(1, (pass.frames() + free - 1) / free);
        Span next = after;
        if (next == null || every > 1) {
            lastAfter = -1;
        } else {
            int left = free - (pass == null ? 0 : pass.frames());
            lastAfter = left <= 0 ? -1 : Math.min(frames - 1, Math.min(next.last(), next.first() + left - 1));
        }
        kept = pass == null ? 0 : (pass.frames() + every - 1) / every;
        kept += next == null || lastAfter < next.first() ? 0 : lastAfter - next.first() + 1;
    }

    private int near(IntPredicate has, int room) {
        int left = Math.max(Math.min(STANDING, room / 8), room - kept - 3 * STANDING);
        int forward = travel > 0 ? Math.min(MOST_FORWARD, Math.min(left, room / 4)) : Math.min(STANDING, room / 8);
        // Half of the room for the way back: one long decode from a key then lasts for that many steps.
        int back = travel < 0
                ? Math.min(MOST_BACK, Math.min(left, room / 2))
                : travel > 0 ? 0 : Math.min(STANDING, room / 8);
        if (travel < 0) {
            return firstMissing(has, -1, back);
        }
        int frame = firstMissing(has, 1, forward);
        return frame != NOTHING ? frame : firstMissing(has, -1, back);
    }

    private int firstMissing(IntPredicate has, int step, int reach) {
        for (int i = 1; i <= reach; i++) {
            int frame = current + i * step;
            if (frame < 0 || frame >= frames) {
                return NOTHING;
            }
            if (!has.test(frame)) {
                return frame;
            }
        }
        return NOTHING;
    }
}
