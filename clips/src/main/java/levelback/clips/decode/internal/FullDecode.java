package levelback.clips.decode.internal;

import java.util.Arrays;
import java.util.BitSet;
import java.util.function.BooleanSupplier;
import levelback.clips.open.ClipException;
import levelback.clips.open.Watch;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.global.avutil;
import org.jspecify.annotations.Nullable;

/**
 * What comes out when a file is decoded from its start: the measure of all other reading. May be stopped after a number
 * of frames, to try the beginning only.
 */
final class FullDecode {

    int count;
    int[] packet = new int[1024];
    byte[] nth = new byte[1024];
    long[] pts = new long[1024];
    int[] check = new int[1024];
    final BitSet key = new BitSet();
    final BitSet suspect = new BitSet();
    /** Packets that gave a frame. */
    final BitSet gave = new BitSet();

    /** Packets before which the reader found bytes that it could not read. */
    final BitSet brokenBefore = new BitSet();
    /** Packets of which the decoder complained, in its log or by refusing them. */
    final BitSet complained = new BitSet();

    int errors;
    /** Whether a line that tells of damage was logged meanwhile. */
    boolean heard;

    boolean interlaced;

    @Nullable
    PictureShape shape;

    private FullDecode() {}

    /**
     * @param most frames after which to stop
     * @param threads of the decoder
     */
    static FullDecode of(MediaFile file, int most, int threads, BooleanSupplier cancelled) throws ClipException {
        FullDecode all = new FullDecode();
        AVFrame frame = avutil.av_frame_alloc();
        try (FrameDecoder decoder = new FrameDecoder(file, threads);
                Planes planes = new Planes()) {
            int number = 0;
            int anywhere = NativeLog.complaintsOnAnyThread();
            while (all.count < most) {
                if (cancelled.getAsBoolean()) {
                    throw MediaFile.cancelled(file.file());
                }
                int before = NativeLog.complaints();
                int error = file.read();
                if (error == avutil.AVERROR_EXIT()) {
                    throw MediaFile.cancelled(file.file());
                }
                boolean ended = error < 0;
                int read = NativeLog.complaints();
                all.brokenBefore.set(number, read > before);
                int refused = decoder.errors();
                decoder.send(ended ? null : file.packet(), number);
                while (decoder.receive(frame)) {
                    all.add(file, decoder, frame, planes);
                    avutil.av_frame_unref(frame);
                }
                if ((number & 15) == 0 && most == Integer.MAX_VALUE) {
                    Watch.tell(cancelled, true, file.fraction());
                }
                all.complained.set(number, NativeLog.complaints() > read || decoder.errors() > refused);
                number++;
                if (ended) {
                    break;
                }
            }
            all.errors = decoder.errors();
            all.heard = NativeLog.complaintsOnAnyThread() > anywhere;
            return all;
        } finally {
            avutil.av_frame_free(frame);
        }
    }

    private void add(MediaFile file, FrameDecoder decoder, AVFrame frame, Planes planes) throws ClipException {
        if (count == packet.length) {
            int more = count * 2;
            packet = Arrays.copyOf(packet, more);
            nth = Arrays.copyOf(nth, more);
            pts = Arrays.copyOf(pts, more);
            check = Arrays.copyOf(check, more);
        }
        if (shape == null) {
            Planes.requirePackable(frame, MediaFile.name(file.file()));
            shape = PictureShape.of(file, frame);
        }
        packet[count] = decoder.packet();
        nth[count] = (byte) decoder.nth();
        pts[count] = frame.best_effort_timestamp();
        check[count] = planes.check(frame);
        key.set(count, (frame.flags() & FrameDecoder.FLAG_KEY) != 0);
        suspect.set(count, (frame.flags() & FrameDecoder.FLAG_CORRUPT) != 0 || frame.decode_error_flags() != 0);
        interlaced |= (frame.flags() & FrameDecoder.FLAG_INTERLACED) != 0;
        gave.set(decoder.packet());
        count++;
    }
}
