package levelback.clips.decode.internal;

import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.util.BitSet;
import levelback.clips.decode.FrameReader;
import levelback.clips.open.ClipException;
import levelback.clips.open.ClipException.Reason;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.global.avcodec;
import org.bytedeco.ffmpeg.global.avformat;
import org.bytedeco.ffmpeg.global.avutil;
import org.bytedeco.javacpp.Pointer;

/**
 * Exact frames by seeking. A frame is what its packet's name says it is; where the order comes from a full decode it must
 * also have that decode's check sum. A place to begin that does not deliver is struck out and an earlier one tried, at
 * last the start of the file.
 */
public final class ExactReader implements FrameReader {

    /** Decoding on costs less than a seek as long as the next key is no farther than this many packets ahead. */
    private static final int NEARBY_PACKETS = 8;

    private static final int EARLIER_SEEKS = 3;

    private enum SeekBy {
        DTS,
        PTS,
        BYTE
    }

    private final Path path;
    private final FrameOrder order;
    private final PacketList packets;
    private final int threads;
    private final AVFrame arriving = avutil.av_frame_alloc();
    private final FrameCache cache;
    private final Planes planes = new Planes();
    private final BgraPicture bgra;
    private final BitSet struckOut = new BitSet();

    private MediaFile file;
    private FrameDecoder decoder;
    private SeekBy seekBy;
    /** Number of the next packet to send. */
    private int next;
    /** The packet {@code next} has been read already. */
    private boolean held;

    private boolean ended;
    /** Frames below this may not be trusted in this run: they lean on pictures from before its key. */
    private int showsFrom;
    /** The frame that came out last in this run, or below 0. */
    private int last;

    private boolean closed;

    /**
     * @param threads of the decoder; 1 for damaged files, where concealment depends on their number
     * @param cacheBytes for decoded pictures; never more than a sixteenth of the machine's memory
     * @param width of the pictures that {@link #readBgra} gives
     * @param height of the pictures that {@link #readBgra} gives
     */
    public ExactReader(Path path, FrameOrder order, int threads, long cacheBytes, int width, int height)
            throws ClipException {
        this.path = path;
        this.bgra = new BgraPicture(width, height);
        this.order = order;
        this.packets = order.packets();
        this.threads = threads;
        this.cache = new FrameCache(Math.min(cacheBytes, Pointer.totalPhysicalBytes() / 16));
        this.file = MediaFile.open(path, () -> false);
        try {
            this.decoder = new FrameDecoder(file, threads);
        } catch (ClipException e) {
            file.close();
            throw e;
        }
        String container = file.container();
        this.seekBy = file.raw() || container.equals("mpegts") || container.equals("mpeg")
                ? SeekBy.BYTE
                : container.startsWith("matroska") ? SeekBy.PTS : SeekBy.DTS;
        begin(0, 0);
    }

    private void begin(int packet, int from) {
        next = packet;
        held = false;
        ended = false;
        showsFrom = from;
        last = -1;
    }

    @Override
    public String md5(int frame) throws ClipException {
        return planes.md5(picture(frame));
    }

    @Override
    public void readBgra(int frame, ByteBuffer into, int strideBytes) throws ClipException {
        bgra.convert(picture(frame), into, strideBytes, MediaFile.name(path));
    }

    private AVFrame picture(int frame) throws ClipException {
        if (closed) {
            throw new IllegalStateException("closed");
        }
        if (frame < 0 || frame >= order.frames()) {
            throw new ClipException(
                    Reason.PAST_THE_END,
                    "There is no frame " + frame + " in " + MediaFile.name(path) + "; its frames are numbered 0 to "
                            + (order.frames() - 1) + ".");
        }
        AVFrame known = cache.get(frame);
        if (known != null) {
            return known;
        }
        int key = order.keyFor(frame, struckOut);
        boolean onTheWay = frame > last
                && frame >= showsFrom
                && !ended
                && (key < 0 || order.keyPacket(key) <= next + NEARBY_PACKETS);
        if (onTheWay && runTo(frame)) {
            return found(frame);
        }
        while (key >= 0) {
            if (seekTo(key) && runTo(frame)) {
                return found(frame);
            }
            struckOut.set(key);
            key = order.keyFor(frame, struckOut);
        }
        restart();
        if (runTo(frame)) {
            return found(frame);
        }
        throw new ClipException(
                Reason.UNREADABLE_FRAME,
                "Frame " + frame + " of " + MediaFile.name(path)
                        + " does not come out of the decoder; the file is damaged there, so choose another frame.");
    }

    private AVFrame found(int frame) {
        AVFrame picture = cache.get(frame);
        if (picture == null) {
            throw new IllegalStateException("frame " + frame + " fell out of the cache");
        }
        return picture;
    }

    /** Decodes on until a frame has come out; false if it is not to be had in this run. */
    private boolean runTo(int wanted) throws ClipException {
        while (true) {
            while (decoder.receive(arriving)) {
                int frame = order.frameOf(decoder.packet(), decoder.nth());
                boolean trusted =
                        frame >= showsFrom && (!order.checked() || order.passes(frame, planes.check(arriving)));
                if (!trusted) {
                    avutil.av_frame_unref(arriving);
                    if (frame == wanted) {
                        return false;
                    }
                    continue;
                }
                last = frame;
                cache.put(frame, arriving, wanted);
                if (frame == wanted) {
                    return true;
                }
                if (frame > wanted) {
                    return false;
                }
            }
            if (ended || !sendNext()) {
                return false;
            }
        }
    }

    private boolean sendNext() throws ClipException {
        int error = held ? 0 : file.read();
        held = false;
        if (error < 0 || next >= packets.count()) {
            ended = true;
            decoder.send(null, 0);
            return true;
        }
        if (file.packet().size() != packets.size(next)) {
            return false; // not where the scan says we are
        }
        decoder.send(file.packet(), next++);
        return true;
    }

    /** Goes to a key packet; false if the container won't lead there. */
    private boolean seekTo(int key) throws ClipException {
        int packet = order.keyPacket(key);
        int target = key;
        for (int i = 0; i < EARLIER_SEEKS && target >= 0; i++, target--) {
            if (seek(order.keyPacket(target)) < 0) {
                return false;
            }
            int arrived = readUpTo(packet);
            if (arrived == packet) {
                begin(packet, order.keyShows(key));
                held = true;
                return true;
            }
            if (arrived < 0) {
                return false;
            }
        }
        return false;
    }

    private int seek(int packet) {
        decoder.flush();
        int stream = file.stream().index();
        // Where the scan's clock ran on over a wrap only bytes lead there, and those formats go by bytes.
        if (seekBy == SeekBy.BYTE && packets.position(packet) >= 0) {
            return avformat.av_seek_frame(file.format(), stream, packets.position(packet), avformat.AVSEEK_FLAG_BYTE);
        }
        long time = seekBy == SeekBy.PTS || packets.dts(packet) == PacketList.NONE
                ? packets.pts(packet)
                : packets.dts(packet);
        return time == PacketList.NONE
                ? -1
                : avformat.av_seek_frame(file.format(), stream, time, avformat.AVSEEK_FLAG_BACKWARD);
    }

    /** Reads until the packet is there; gives the number of the packet read last, or below 0. */
    private int readUpTo(int packet) {
        int most = packets.count() + 1;
        for (int i = 0; i < most; i++) {
            if (file.read() < 0) {
                return -1;
            }
            int number = packets.numberOf(file.packet());
            if (number >= packet) {
                return number;
            }
        }
        return -1;
    }

    /** Opens the file anew and stands before its first packet: slow and sure. */
    private void restart() throws ClipException {
        decoder.close();
        file.close();
        file = MediaFile.open(path, () -> false);
        decoder = new FrameDecoder(file, threads);
        begin(0, 0);
    }

    @Override
    public void close() {
        if (!closed) {
            closed = true;
            decoder.close();
            file.close();
            cache.close();
            planes.close();
            bgra.close();
            avutil.av_frame_free(arriving);
        }
    }

    static {
        // Touch the codec library before the first frame is due.
        avcodec.avcodec_version();
    }
}
