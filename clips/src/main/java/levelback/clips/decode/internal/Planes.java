package levelback.clips.decode.internal;

import java.nio.ByteBuffer;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.zip.CRC32C;
import levelback.clips.open.ClipException;
import org.bytedeco.ffmpeg.avutil.AVBufferRef;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.avutil.AVPixFmtDescriptor;
import org.bytedeco.ffmpeg.global.avutil;
import org.bytedeco.javacpp.BytePointer;

/** A decoded picture in its own pixel format with its rows packed: what fingerprints are taken of. */
final class Planes implements AutoCloseable {

    /** AV_NUM_DATA_POINTERS of libavutil/frame.h. */
    private static final int MOST_BUFFERS = 8;

    private static final long UNLIKE_ROWS =
            avutil.AV_PIX_FMT_FLAG_PAL | avutil.AV_PIX_FMT_FLAG_BITSTREAM | avutil.AV_PIX_FMT_FLAG_HWACCEL;

    private BytePointer packed = new BytePointer();
    private ByteBuffer bytes = ByteBuffer.allocateDirect(0);

    /** Bytes that a decoded picture takes in the cache: its buffers, with the decoder's margins. */
    static long weigh(AVFrame frame) {
        long bytes = 4096;
        for (int i = 0; i < MOST_BUFFERS; i++) {
            AVBufferRef buffer = frame.buf(i);
            if (buffer == null) {
                break;
            }
            bytes += buffer.size();
        }
        return bytes;
    }

    private ByteBuffer pack(AVFrame frame) {
        int size = avutil.av_image_get_buffer_size(frame.format(), frame.width(), frame.height(), 1);
        if (size < 0) {
            throw new IllegalArgumentException("no packed form of pixel format " + frame.format());
        }
        if (bytes.capacity() != size) {
            packed.close();
            packed = new BytePointer(size);
            bytes = packed.asBuffer();
        }
        avutil.av_image_copy_to_buffer(
                packed, size, frame.data(), frame.linesize(), frame.format(), frame.width(), frame.height(), 1);
        return bytes.duplicate();
    }

    /** As FFmpeg's framemd5. */
    String md5(AVFrame frame) {
        try {
            MessageDigest digest = MessageDigest.getInstance("MD5");
            digest.update(pack(frame));
            return HexFormat.of().formatHex(digest.digest());
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    /** CRC32C of the packed picture, against which every later decode of it is checked. */
    int check(AVFrame frame) {
        CRC32C crc = new CRC32C();
        AVPixFmtDescriptor kind = avutil.av_pix_fmt_desc_get(frame.format());
        boolean planar = kind != null && (kind.flags() & UNLIKE_ROWS) == 0;
        if (!planar || !rowByRow(frame, kind, crc)) {
            crc.reset();
            crc.update(pack(frame));
        }
        return (int) crc.getValue();
    }

    /** The same bytes in the same order as {@link #pack}, but where they are; false if they don't lie in plain rows. */
    private static boolean rowByRow(AVFrame frame, AVPixFmtDescriptor kind, CRC32C crc) {
        int planes = avutil.av_pix_fmt_count_planes(frame.format());
        for (int plane = 0; plane < planes; plane++) {
            boolean chroma = plane == 1 || plane == 2;
            int rows = chroma ? -(-frame.height() >> kind.log2_chroma_h()) : frame.height();
            int bytes = avutil.av_image_get_linesize(frame.format(), frame.width(), plane);
            int stride = frame.linesize(plane);
            BytePointer data = frame.data(plane);
            if (bytes <= 0 || stride < bytes || data == null) {
                return false;
            }
            ByteBuffer all = new BytePointer(data)
                    .capacity((long) stride * (rows - 1) + bytes)
                    .asBuffer();
            if (stride == bytes) {
                crc.update(all);
                continue;
            }
            for (int y = 0; y < rows; y++) {
                crc.update(all.limit(y * stride + bytes).position(y * stride));
            }
        }
        return true;
    }

    /** @throws ClipException if the picture is of a kind that can't be packed */
    static void requirePackable(AVFrame frame, String name) throws ClipException {
        if (avutil.av_image_get_buffer_size(frame.format(), frame.width(), frame.height(), 1) < 0) {
            throw new ClipException(
                    ClipException.Reason.BROKEN,
                    name + " has pictures of a kind that cannot be read; convert it first.");
        }
    }

    @Override
    public void close() {
        packed.close();
    }
}
