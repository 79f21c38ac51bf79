package levelback.clips.decode.internal;

import java.util.Map;
import java.util.TreeMap;
import java.util.function.LongSupplier;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.global.avutil;
import org.jspecify.annotations.Nullable;

/**
 * Decoded pictures as the decoder gave them (YUV, in the decoder's own pooled memory), weighed in bytes. Over its weight
 * it lets go first of what is farthest from the frame on show, where what lies behind the way of travel counts as four
 * times as far; what the {@link ReadAhead} keeps goes last.
 */
final class FrameCache implements AutoCloseable {

    /** Behind the way of travel a frame counts as so many times as far. */
    private static final int BEHIND = 4;

    /** A kept picture. */
    static final class Kept {
        private final AVFrame picture;
        private final long bytes;
        private final int from;
        private boolean proved;

        private Kept(AVFrame picture, long bytes, int from) {
            this.picture = picture;
            this.bytes = bytes;
            this.from = from;
        }

        AVFrame picture() {
            return picture;
        }

        /** Where the run began that it came from. */
        int from() {
            return from;
        }

        /** Whether it has been held against its check sum. */
        boolean proved() {
            return proved;
        }

        void prove() {
            proved = true;
        }
    }

    private final TreeMap<Integer, Kept> frames = new TreeMap<>();
    private final LongSupplier mostBytes;
    private long bytes;
    private long frameBytes = 1;

    /** @param mostBytes asked at every new picture, since readers share what there is */
    FrameCache(LongSupplier mostBytes) {
        this.mostBytes = mostBytes;
    }

    @Nullable
    Kept get(int frame) {
        return frames.get(frame);
    }

    boolean has(int frame) {
        return frames.containsKey(frame);
    }

    /** How many pictures find room. */
    int room() {
        return (int) Math.max(2, Math.min(Integer.MAX_VALUE, mostBytes.getAsLong() / frameBytes));
    }

    /** Bytes that its pictures take. */
    long bytes() {
        return bytes;
    }

    /**
     * Takes over the picture in {@code arrived}, which is empty afterwards.
     *
     * @param from where the run began that it came from
     * @param plan what to keep, and around which frame
     */
    void put(int frame, AVFrame arrived, int from, ReadAhead plan) {
        if (frames.containsKey(frame)) {
            avutil.av_frame_unref(arrived);
            return;
        }
        AVFrame own = avutil.av_frame_alloc();
        avutil.av_frame_move_ref(own, arrived);
        frameBytes = Planes.weigh(own);
        frames.put(frame, new Kept(own, frameBytes, from));
        bytes += frameBytes;
        long most = mostBytes.getAsLong();
        while (bytes > most && frames.size() > 2) {
            drop(farthest(plan));
        }
    }

    private int farthest(ReadAhead plan) {
        int low = frames.firstKey();
        int high = frames.lastKey();
        Integer freeLow = low;
        while (freeLow != null && plan.keeps(freeLow)) {
            freeLow = frames.higherKey(freeLow);
        }
        if (freeLow != null) {
            Integer freeHigh = high;
            while (freeHigh != null && plan.keeps(freeHigh)) {
                freeHigh = frames.lowerKey(freeHigh);
            }
            low = freeLow;
            high = freeHigh == null ? freeLow : freeHigh;
        }
        return distance(low, plan) > distance(high, plan) ? low : high;
    }

    private static long distance(int frame, ReadAhead plan) {
        long way = (long) frame - plan.current();
        return way * plan.travel() < 0 ? BEHIND * Math.abs(way) : Math.abs(way);
    }

    void drop(int frame) {
        Kept old = frames.remove(frame);
        if (old != null) {
            bytes -= old.bytes;
            avutil.av_frame_free(old.picture);
        }
    }

    @Override
    public void close() {
        for (Map.Entry<Integer, Kept> entry : frames.entrySet()) {
            avutil.av_frame_free(entry.getValue().picture);
        }
        frames.clear();
        bytes = 0;
    }
}
