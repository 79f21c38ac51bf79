package levelback.clips.decode.internal;

import java.nio.file.Path;
import java.util.function.BooleanSupplier;
import levelback.clips.open.ClipException;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.global.avformat;
import org.bytedeco.ffmpeg.global.avutil;

/**
 * One open file with its decoder, on its way from a place to begin. Frames come out in order of presentation, each with
 * its number. Used by one thread.
 */
final class DecodeRun implements AutoCloseable {

    /** Stands for "no frame": the run is over, or has left the packets that the scan knows. */
    static final int OVER = -1;

    /** The run began at the start of the file and not at a key packet. */
    static final int FROM_START = -1;

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
    private final BooleanSupplier interrupted;
    private final SeekBy seekBy;

    private MediaFile file;
    private FrameDecoder decoder;
    /** Number of the next packet to send. */
    private int next;
    /** The packet {@code next} has been read already. */
    private boolean held;

    private boolean ended;
    /** Frames below this may not be trusted in this run: they lean on pictures from before its key. */
    private int showsFrom;
    /** The frame that came out last in this run, or below 0. */
    private int last;
    /** Place in the list of keys where the run began, or {@link #FROM_START}. */
    private int from;

    private int strangers;

    /** @param interrupted polled by every read of the file */
    DecodeRun(Path path, FrameOrder order, int threads, BooleanSupplier interrupted) throws ClipException {
        this.path = path;
        this.order = order;
        this.packets = order.packets();
        this.threads = threads;
        this.interrupted = interrupted;
        this.file = MediaFile.open(path, packets.delay(), interrupted);
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
        begin(0, 0, FROM_START);
    }

    private void begin(int packet, int shows, int place) {
        next = packet;
        held = false;
        ended = false;
        showsFrom = shows;
        last = -1;
        from = place;
    }

    /** Where the run began: a place in the list of keys, or {@link #FROM_START}. */
    int from() {
        return from;
    }

    /** Pictures that came out so far and that the order does not know. */
    int strangers() {
        return strangers;
    }

    /** What the decoder called wrong so far. */
    int errors() {
        return decoder.errors();
    }

    /** Whether a frame can still come out of this run. */
    boolean ahead(int frame) {
        return !ended && frame > last && frame >= showsFrom;
    }

    /** Number of the next packet to be sent. */
    int nextPacket() {
        return next;
    }

    /**
     * Gives the next frame of the run.
     *
     * @param into takes the picture; empty before
     * @return its number, or {@link #OVER}
     */
    int next(AVFrame into) {
        while (true) {
            while (decoder.receive(into)) {
                int frame = order.frameOf(decoder.packet(), decoder.nth());
                strangers += frame < 0 ? 1 : 0;
                if (frame >= showsFrom) {
                    last = frame;
                    return frame;
                }
                avutil.av_frame_unref(into);
            }
            if (ended || !sendNext()) {
                return OVER;
            }
        }
    }

    private boolean sendNext() {
        int error = held ? 0 : file.read();
        held = false;
        if (error == avutil.AVERROR_EXIT()) {
            ended = true; // stopped in mid-read: the next wish begins with a seek
            return false;
        }
        if (error < 0 || next >= packets.count()) {
            ended = true;
            decoder.send(null, 0);
            return true;
        }
        if (file.packet().size() != packets.size(next)) {
            ended = true; // not where the scan says we are
            return false;
        }
        decoder.send(file.packet(), next++);
        return true;
    }

    /** Goes to a key packet; false if the container won't lead there. */
    boolean seekTo(int key) {
        int packet = order.keyPacket(key);
        int target = key;
        for (int i = 0; i < EARLIER_SEEKS && target >= 0; i++, target--) {
            if (seek(order.keyPacket(target)) < 0) {
                break;
            }
            int arrived = readUpTo(packet);
            if (arrived == packet) {
                begin(packet, order.keyShows(key), key);
                held = true;
                return true;
            }
            if (arrived < 0) {
                break;
            }
        }
        ended = true;
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
    void restart() throws ClipException {
        decoder.close();
        file.close();
        ended = true;
        file = MediaFile.open(path, interrupted);
        decoder = new FrameDecoder(file, threads);
        begin(0, 0, FROM_START);
    }

    @Override
    public void close() {
        decoder.close();
        file.close();
    }
}
