package levelback.clips.decode.internal;

import levelback.clips.open.ClipException;
import levelback.clips.open.ClipException.Reason;
import org.bytedeco.ffmpeg.avcodec.AVCodec;
import org.bytedeco.ffmpeg.avcodec.AVCodecContext;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
import org.bytedeco.ffmpeg.avutil.AVDictionary;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.global.avcodec;
import org.bytedeco.ffmpeg.global.avutil;
import org.bytedeco.javacpp.Loader;
import org.bytedeco.javacpp.Pointer;

/**
 * A decoder that names every frame by the packet it came from. The name carries the number of the run (a run begins with
 * each flush), so that a frame left over from before a seek is known and dropped.
 */
final class FrameDecoder implements AutoCloseable {

    // Macros of libavutil/frame.h that the preset does not carry over.
    static final int FLAG_CORRUPT = 1;
    static final int FLAG_KEY = 1 << 1;
    static final int FLAG_INTERLACED = 1 << 3;
    static final int FLAG_TOP_FIRST = 1 << 4;

    private static final int AGAIN = Loader.getPlatform().startsWith("macosx") ? -35 : -11;

    /** 8 bits of run and 24 of packet would be few; an address has 64 bits: 24 of run, 40 of packet. */
    private static final int PACKET_BITS = 40;

    private static final long MOST_PIXELS = 1L << 27;

    private final AVCodecContext context;
    private final PacketName name = new PacketName(0);
    private long run = 1;
    private int lastPacket = -1;
    private int nth;
    private int errors;

    FrameDecoder(MediaFile file, int threads) throws ClipException {
        int codec = file.stream().codecpar().codec_id();
        AVCodec decoder = avcodec.avcodec_find_decoder(codec);
        if (decoder == null) {
            throw new ClipException(
                    Reason.NOT_A_RECORDING,
                    MediaFile.name(file.file()) + " is coded as "
                            + avcodec.avcodec_get_name(codec).getString()
                            + ", which Levelback cannot decode; convert it to H.264 first.");
        }
        context = avcodec.avcodec_alloc_context3(decoder);
        avcodec.avcodec_parameters_to_context(context, file.stream().codecpar());
        context.pkt_timebase(file.stream().time_base());
        context.flags(context.flags() | avcodec.AV_CODEC_FLAG_COPY_OPAQUE);
        context.thread_count(threads);
        context.max_pixels(MOST_PIXELS);
        int error = avcodec.avcodec_open2(context, decoder, (AVDictionary) null);
        if (error < 0) {
            avcodec.avcodec_free_context(context);
            throw new ClipException(
                    Reason.BROKEN,
                    MediaFile.name(file.file()) + " has a picture stream that cannot be decoded (FFmpeg: "
                            + NativeLog.words(error) + "); copy it from the camera again.");
        }
    }

    /** Threads that pay without making the first frame after a seek wait long. */
    static int threads() {
        return Math.max(1, Math.min(4, Runtime.getRuntime().availableProcessors()));
    }

    /**
     * Sends a packet, or the end. All frames must have been received before.
     *
     * @param packet null for the end
     * @return false if the decoder called the packet wrong
     */
    boolean send(@org.jspecify.annotations.Nullable AVPacket packet, int number) {
        if (packet != null) {
            name.rename(run << PACKET_BITS | number + 1L);
            packet.opaque(name);
        }
        int error = avcodec.avcodec_send_packet(context, packet);
        if (error < 0 && error != avutil.AVERROR_EOF()) {
            errors++;
            return false;
        }
        return true;
    }

    /** Receives the next frame of this run; false when the decoder wants another packet or has reached the end. */
    boolean receive(AVFrame frame) {
        while (true) {
            int error = avcodec.avcodec_receive_frame(context, frame);
            if (error == AGAIN || error == avutil.AVERROR_EOF()) {
                return false;
            }
            if (error < 0) {
                errors++;
                if (error == avutil.AVERROR_ENOMEM()) {
                    return false;
                }
                continue;
            }
            Pointer opaque = frame.opaque();
            long value = opaque == null ? 0 : opaque.address();
            if (value >>> PACKET_BITS != run) {
                avutil.av_frame_unref(frame); // from before the last seek
                continue;
            }
            int packet = (int) ((value & (1L << PACKET_BITS) - 1) - 1);
            nth = packet == lastPacket ? nth + 1 : 0;
            lastPacket = packet;
            return true;
        }
    }

    /** Packet of the frame received last. */
    int packet() {
        return lastPacket;
    }

    /** 0 for the first frame of its packet, 1 for a second one. */
    int nth() {
        return nth;
    }

    /** Begins a new run after a seek. */
    void flush() {
        avcodec.avcodec_flush_buffers(context);
        run = run + 1 & 0xFFFFFF;
        lastPacket = -1;
        nth = 0;
    }

    /** Packets and frames that the decoder called wrong so far. */
    int errors() {
        return errors;
    }

    @Override
    public void close() {
        avcodec.avcodec_free_context(context);
    }
}
