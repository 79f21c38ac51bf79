package levelback.clips.decode.internal;

import java.nio.ByteBuffer;
import org.bytedeco.ffmpeg.avcodec.AVCodecParameters;
import org.bytedeco.ffmpeg.avcodec.AVPacket;

/**
 * Whether an H.264 packet that the container calls a key picture is one to begin decoding at: an IDR picture, or one with
 * a recovery point message that promises the right picture at once. A picture that recovers only after some more (intra
 * refresh), or that promises nothing, may show leftovers of what was before it without the decoder's noticing.
 *
 * <p>References: ITU-T H.264, 7.3.1 (NAL unit), 7.4.1 table 7-1 (types), D.1.8 and D.2.8 (recovery point), annex B;
 * ISO/IEC 14496-15, 5.3.3.1 (length size in avcC).
 */
final class H264Entry {

    private static final int SLICE = 1;
    private static final int IDR = 5;
    private static final int SEI = 6;
    private static final int RECOVERY_POINT = 6;
    private static final int MOST_SCANNED_BYTES = 1 << 16;

    /** Bytes of the length before each NAL unit; 0 where start codes part them. */
    private final int lengthBytes;

    H264Entry(AVCodecParameters parameters) {
        boolean boxed =
                parameters.extradata_size() >= 7 && parameters.extradata().get(0) == 1;
        lengthBytes = boxed ? (parameters.extradata().get(4) & 3) + 1 : 0;
    }

    boolean clean(AVPacket packet) {
        ByteBuffer data = packet.data().capacity(packet.size()).asBuffer();
        boolean recovers = false;
        int at = next(data, 0);
        while (at >= 0 && at < data.limit()) {
            int type = data.get(at) & 31;
            if (type == IDR) {
                return true;
            }
            if (type == SLICE || (type > SLICE && type < IDR)) {
                return recovers;
            }
            if (type == SEI && recoversAtOnce(data, at + 1)) {
                recovers = true;
            }
            at = next(data, at);
        }
        return false;
    }

    /** Where the NAL unit after {@code from} begins; {@code from} 0 asks for the first one. */
    private int next(ByteBuffer data, int from) {
        if (lengthBytes > 0) {
            int lengthAt = from == 0 ? 0 : from + length(data, from - lengthBytes);
            return lengthAt >= 0 && lengthAt + lengthBytes < data.limit() ? lengthAt + lengthBytes : -1;
        }
        for (int i = from; i + 3 < Math.min(data.limit(), MOST_SCANNED_BYTES); i++) {
            if (data.get(i) == 0 && data.get(i + 1) == 0 && data.get(i + 2) == 1) {
                return i + 3;
            }
        }
        return -1;
    }

    private int length(ByteBuffer data, int at) {
        int length = 0;
        for (int i = 0; i < lengthBytes; i++) {
            length = length << 8 | (data.get(at + i) & 0xFF);
        }
        return length < 0 || length > data.limit() ? data.limit() : length;
    }

    /** Goes through the messages of an SEI unit for a recovery point whose frame count is 0 (first bit set). */
    private static boolean recoversAtOnce(ByteBuffer data, int from) {
        int at = from;
        while (at + 2 < data.limit()) {
            int type = 0;
            while (at < data.limit() && (data.get(at) & 0xFF) == 0xFF) {
                type += 255;
                at++;
            }
            type += at < data.limit() ? data.get(at++) & 0xFF : 0;
            int size = 0;
            while (at < data.limit() && (data.get(at) & 0xFF) == 0xFF) {
                size += 255;
                at++;
            }
            size += at < data.limit() ? data.get(at++) & 0xFF : 0;
            if (type == RECOVERY_POINT) {
                return at < data.limit() && (data.get(at) & 0x80) != 0;
            }
            if (size == 0 || (at + size < data.limit() && (data.get(at + size) & 0xFF) == 0x80)) {
                return false; // the unit's trailing bits
            }
            at += size;
        }
        return false;
    }
}
