package levelback.clips.write;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalLong;
import levelback.clips.index.IndexedFrame;
import levelback.clips.open.Clip;
import levelback.clips.open.ClipException;
import levelback.scoring.value.TimeBase;

/** The frames of a span and when each is shown, counted from the first of them on a clock that a film can have. */
final class ClipSpan {

    private static final TimeBase MILLISECONDS = new TimeBase(1, 1000);

    private final int first;
    private final TimeBase base;
    private final long[] ticks;
    private final long endTicks;

    private ClipSpan(int first, TimeBase base, long[] ticks, long endTicks) {
        this.first = first;
        this.base = base;
        this.ticks = ticks;
        this.endTicks = endTicks;
    }

    /** Number of the first frame. */
    int first() {
        return first;
    }

    /**
     * The clock: the stream's own, or microseconds where a frame has no stamp or the stamps run backwards, or milliseconds
     * where a gap is too long for those. Its numerator is 1.
     */
    TimeBase base() {
        return base;
    }

    /** When a frame is shown, in ticks from 0; ascending. */
    long at(int i) {
        return ticks[i];
    }

    /** When the last frame ends. */
    long endTicks() {
        return endTicks;
    }

    /** How many frames. */
    int frames() {
        return ticks.length;
    }

    /** Ticks for which a frame is shown. */
    long duration(int i) {
        return Math.max(1, (i + 1 < ticks.length ? ticks[i + 1] : endTicks) - ticks[i]);
    }

    /**
     * From the frame on show at {@code fromS} to the last that starts before {@code toS}, both counted from frame 0.
     *
     * @throws ClipException if the recording has ended by then
     */
    static ClipSpan of(Clip clip, double fromS, double toS) throws ClipException {
        int first = Still.frameAt(clip, fromS);
        List<IndexedFrame> frames = clip.index().frames();
        long startUs = frames.get(0).timeUs();
        int last = first;
        long toUs = Math.round(toS * 1e6);
        while (last + 1 < frames.size() && frames.get(last + 1).timeUs() - startUs < toUs) {
            last++;
        }
        return of(clip, first, last);
    }

    private static ClipSpan of(Clip clip, int first, int last) {
        List<IndexedFrame> frames = clip.index().frames().subList(first, last + 1);
        TimeBase own = clip.facts().timeBase();
        boolean stamped = true;
        long before = Long.MIN_VALUE;
        for (IndexedFrame frame : frames) {
            OptionalLong pts = frame.pts();
            stamped &= pts.isPresent() && pts.getAsLong() > before;
            before = pts.orElse(before);
        }
        long fromUs = frames.get(0).timeUs();
        if (stamped) {
            long from = frames.get(0).pts().orElse(0);
            long[] ticks = frames.stream()
                    .mapToLong(frame -> (frame.pts().orElse(0) - from) * own.numerator())
                    .toArray();
            ClipSpan exact = new ClipSpan(first, new TimeBase(1, own.denominator()), ticks, 0);
            if (exact.fits()) {
                return exact.ending(clip, last);
            }
        }
        long[] micros = ascending(
                frames.stream().mapToLong(frame -> frame.timeUs() - fromUs).toArray());
        ClipSpan fine = new ClipSpan(first, TimeBase.MICROSECONDS, micros, 0);
        if (fine.fits()) {
            return fine.ending(clip, last);
        }
        long[] millis = ascending(Arrays.stream(micros).map(us -> us / 1000).toArray());
        return new ClipSpan(first, MILLISECONDS, millis, 0).ending(clip, last);
    }

    private static long[] ascending(long[] ticks) {
        for (int i = 1; i < ticks.length; i++) {
            ticks[i] = Math.max(ticks[i - 1] + 1, ticks[i]);
        }
        return ticks;
    }

    /** A frame of an MP4 may last for 2^31 ticks, which a gap between two joined recordings can exceed. */
    private boolean fits() {
        for (int i = 1; i < ticks.length; i++) {
            if (ticks[i] - ticks[i - 1] > Integer.MAX_VALUE) {
                return false;
            }
        }
        return true;
    }

    private ClipSpan ending(Clip clip, int last) {
        return new ClipSpan(first, base, ticks, ticks[ticks.length - 1] + lastTicks(clip, last, base));
    }

    private static long lastTicks(Clip clip, int last, TimeBase base) {
        List<IndexedFrame> all = clip.index().frames();
        long endUs = last + 1 < all.size()
                ? all.get(last + 1).timeUs()
                : all.get(0).timeUs() + clip.facts().durationUs().orElse(0);
        double seconds = (endUs - all.get(last).timeUs()) / 1e6;
        return Math.min(Integer.MAX_VALUE, Math.max(1, Math.round(seconds * base.denominator() / base.numerator())));
    }
}
