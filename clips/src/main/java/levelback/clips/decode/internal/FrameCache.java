package levelback.clips.decode.internal;

import java.util.Map;
import java.util.TreeMap;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.global.avutil;
import org.jspecify.annotations.Nullable;

/** Decoded pictures near the one asked for last, weighed in bytes; the farthest goes first. */
final class FrameCache implements AutoCloseable {

    private final TreeMap<Integer, AVFrame> frames = new TreeMap<>();
    private final long mostBytes;
    private long bytes;

    FrameCache(long mostBytes) {
        this.mostBytes = mostBytes;
    }

    @Nullable
    AVFrame get(int frame) {
        return frames.get(frame);
    }

    /** Takes over the picture in {@code from}, which is empty afterwards. */
    void put(int frame, AVFrame from, int wanted) {
        if (frames.containsKey(frame)) {
            avutil.av_frame_unref(from);
            return;
        }
        AVFrame kept = avutil.av_frame_alloc();
        avutil.av_frame_move_ref(kept, from);
        frames.put(frame, kept);
        bytes += Planes.weigh(kept);
        while (bytes > mostBytes && frames.size() > 2) {
            int low = frames.firstKey();
            int high = frames.lastKey();
            drop(wanted - low > high - wanted ? low : high);
        }
    }

    private void drop(int frame) {
        AVFrame old = frames.remove(frame);
        if (old != null) {
            bytes -= Planes.weigh(old);
            avutil.av_frame_free(old);
        }
    }

    @Override
    public void close() {
        for (Map.Entry<Integer, AVFrame> entry : frames.entrySet()) {
            avutil.av_frame_free(entry.getValue());
        }
        frames.clear();
        bytes = 0;
    }
}
