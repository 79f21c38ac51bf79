package levelback.clips.write;

import java.util.List;
import java.util.OptionalLong;
import levelback.clips.index.IndexedFrame;
import levelback.clips.open.Clip;
import levelback.clips.open.ClipException;
import levelback.scoring.value.TimeBase;

/**
 * The frames of a span and when each is shown, counted from the first of them on a clock that a film can have.
 *
 * @param first number of the first frame
 * @param base the clock: the stream's own, or microseconds where a frame has no stamp or the stamps run backwards
 * @param ticks when each frame is shown, from 0, ascending
 * @param endTicks when the last one ends
 */
record ClipSpan(int first, TimeBase base, long[] ticks, long endTicks) {

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
        long[] ticks = new long[frames.size()];
        for (int i = 0; i < ticks.length; i++) {
            long at = stamped
                    ? (frames.get(i).pts().orElse(0) - frames.get(0).pts().orElse(0)) * own.numerator()
                    : frames.get(i).timeUs() - frames.get(0).timeUs();
            ticks[i] = i == 0 ? 0 : Math.max(ticks[i - 1] + 1, at);
        }
        TimeBase base = stamped ? new TimeBase(1, own.denominator()) : TimeBase.MICROSECONDS;
        return new ClipSpan(first, base, ticks, ticks[ticks.length - 1] + lastTicks(clip, last, base));
    }

    private static long lastTicks(Clip clip, int last, TimeBase base) {
        List<IndexedFrame> all = clip.index().frames();
        long endUs = last + 1 < all.size()
                ? all.get(last + 1).timeUs()
                : all.get(0).timeUs() + clip.facts().durationUs().orElse(0);
        double seconds = (endUs - all.get(last).timeUs()) / 1e6;
        return Math.max(1, Math.round(seconds * base.denominator() / base.numerator()));
    }
}
