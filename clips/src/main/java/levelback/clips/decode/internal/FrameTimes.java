package levelback.clips.decode.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import levelback.clips.index.ClipIndex;
import levelback.clips.index.IndexedFrame;
import levelback.scoring.value.MediaTime;
import levelback.scoring.value.TimeBase;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.avutil.AVRational;
import org.bytedeco.ffmpeg.global.avformat;

/** The times of all frames, from the stream's stamps; from its frame rate only where it has none. */
public final class FrameTimes {

    private static final double DEFAULT_FPS = 25;
    private static final double MICROS = 1e6;

    private final FrameOrder order;
    private final TimeBase base;
    private final double nominalFps;
    private final ClipIndex index;

    /** Works out the times. */
    public FrameTimes(MediaFile file, FrameOrder order) {
        this(order, file.timeBase(), nominal(file));
    }

    /**
     * As worked out before.
     *
     * @param nominalFps frames per second as the file says
     */
    public FrameTimes(FrameOrder order, TimeBase base, double nominalFps) {
        this.order = order;
        this.base = base;
        this.nominalFps = nominalFps;
        this.index = new ClipIndex(frames());
    }

    /** Frames per second as the file says. */
    public double nominalFps() {
        return nominalFps;
    }

    private static double nominal(MediaFile file) {
        AVRational rate = avformat.av_guess_frame_rate(file.format(), file.stream(), (AVFrame) null);
        return rate.num() > 0 && rate.den() > 0 ? (double) rate.num() / rate.den() : DEFAULT_FPS;
    }

    private List<IndexedFrame> frames() {
        List<IndexedFrame> frames = new ArrayList<>(order.frames());
        long before = Long.MIN_VALUE;
        for (int i = 0; i < order.frames(); i++) {
            long pts = order.pts(i);
            long timeUs;
            if (pts != PacketList.NONE) {
                timeUs = new MediaTime(pts, base).timeUs();
            } else if (i == 0) {
                timeUs = 0;
            } else {
                timeUs = wholly() ? Math.round(i * MICROS / nominalFps) : before + Math.round(MICROS / nominalFps);
            }
            // A stamp that runs backwards (damage, a joined file) must not break the search by time.
            timeUs = i == 0 ? timeUs : Math.max(before, timeUs);
            frames.add(new IndexedFrame(
                    i, pts == PacketList.NONE ? OptionalLong.empty() : OptionalLong.of(pts), timeUs, order.key(i)));
            before = timeUs;
        }
        return frames;
    }

    private boolean stamped(int frame) {
        return order.pts(frame) != PacketList.NONE;
    }

    private boolean wholly() {
        return order.frames() > 0 && order.pts(0) == PacketList.NONE;
    }

    /** The frames with their times. */
    public ClipIndex index() {
        return index;
    }

    private long first() {
        return index.frames().get(0).timeUs();
    }

    /** Time of the last frame. */
    long lastUs() {
        return last();
    }

    private long last() {
        return index.frames().get(index.frames().size() - 1).timeUs();
    }

    /** From one frame to the next on average. */
    long stepUs() {
        return Math.max(1, Math.round(MICROS / averageFps()));
    }

    /** End of the last frame. */
    public long endUs() {
        int frame = order.frames() - 1;
        long ticks = order.packets().duration(order.packetOf(frame));
        long step = ticks > 0 ? new MediaTime(ticks, base).timeUs() : Math.round(MICROS / averageFps());
        return last() + step;
    }

    /** Frames per second on average; the nominal rate where there is one frame only. */
    public double averageFps() {
        int frames = order.frames();
        if (frames > 1 && stamped(0) && stamped(frames - 1) && order.pts(frames - 1) > order.pts(0)) {
            double ticks = order.pts(frames - 1) - order.pts(0);
            return (frames - 1) * (double) base.denominator() / (ticks * base.numerator());
        }
        return frames > 1 && last() > first() ? (frames - 1) * MICROS / (last() - first()) : nominalFps;
    }

    /** Whether every frame lies within a tick (and a rounded microsecond) of an even spacing. */
    public boolean constant() {
        int frames = order.frames();
        if (frames < 3) {
            return true;
        }
        double tickUs = MICROS * base.numerator() / base.denominator();
        double step = (double) (last() - first()) / (frames - 1);
        double allowed = tickUs + 1;
        if (allowed >= step) {
            allowed = step / 2; // a clock as coarse as the frames themselves: each must have its own tick
        }
        for (IndexedFrame frame : index.frames()) {
            if (Math.abs(frame.timeUs() - first() - frame.frame() * step) > allowed) {
                return false;
            }
        }
        return true;
    }

    /** Time of a packet in microseconds, if it has one. */
    OptionalLong packetUs(int packet) {
        long pts = order.packets().pts(packet);
        return pts == PacketList.NONE ? OptionalLong.empty() : OptionalLong.of(new MediaTime(pts, base).timeUs());
    }
}
