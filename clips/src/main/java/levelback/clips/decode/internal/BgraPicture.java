package levelback.clips.decode.internal;

import java.nio.ByteBuffer;
import levelback.clips.open.ClipException;
import levelback.clips.open.ClipException.Reason;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.avutil.AVPixFmtDescriptor;
import org.bytedeco.ffmpeg.global.avutil;
import org.bytedeco.ffmpeg.global.swscale;
import org.bytedeco.ffmpeg.swscale.SwsContext;
import org.bytedeco.ffmpeg.swscale.SwsFilter;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.DoublePointer;
import org.bytedeco.javacpp.IntPointer;
import org.bytedeco.javacpp.PointerPointer;
import org.jspecify.annotations.Nullable;

/**
 * Converts a decoded picture to BGRA with the matrix and range of its stream. Untagged colour: BT.601 below 720 lines,
 * BT.709 from there up; primaries are not converted.
 */
final class BgraPicture implements AutoCloseable {

    private static final int HD_LINES = 720;
    /** swscale writes whole blocks of pixels, past the end of a row that is not a multiple of this. */
    private static final int BLOCK_PIXELS = 16;

    private static final int UNIT = 1 << 16;

    private record Setting(int width, int height, int format, int matrix, boolean full) {}

    /** Size of every picture that is given out; one of another size (a stream may change it) is scaled to it. */
    private final int width;

    private final int height;

    private @Nullable Setting setting;
    private @Nullable SwsContext scaler;
    private final PointerPointer<BytePointer> planes = new PointerPointer<>(4);
    private final IntPointer strides = new IntPointer(4);
    private BytePointer spare = new BytePointer();
    private boolean opaque;

    BgraPicture(int width, int height) {
        this.width = width;
        this.height = height;
    }

    void convert(AVFrame frame, ByteBuffer into, int strideBytes, String name) throws ClipException {
        if (!into.isDirect() || strideBytes < 4 * width || into.capacity() < (long) strideBytes * height) {
            throw new IllegalArgumentException(
                    "need a direct buffer of " + height + " rows of " + strideBytes + " bytes: " + into);
        }
        SwsContext ready = scalerFor(frame, name);
        ByteBuffer whole = into.duplicate();
        whole.clear();
        if (width % BLOCK_PIXELS == 0 && strideBytes % 16 == 0) {
            try (BytePointer target = new BytePointer(whole)) {
                scale(ready, frame, target, strideBytes);
            }
        } else {
            viaSpare(ready, frame, whole, strideBytes);
        }
        if (!opaque) {
            for (int y = 0; y < height; y++) {
                for (int x = 0; x < width; x++) {
                    whole.put(y * strideBytes + 4 * x + 3, (byte) 0xFF);
                }
            }
        }
    }

    private void viaSpare(SwsContext ready, AVFrame frame, ByteBuffer whole, int strideBytes) {
        int padded = 4 * ((width + BLOCK_PIXELS - 1) / BLOCK_PIXELS * BLOCK_PIXELS + BLOCK_PIXELS);
        long size = (long) padded * (height + 1);
        if (spare.capacity() != size) {
            spare.close();
            spare = new BytePointer(size);
        }
        scale(ready, frame, spare, padded);
        ByteBuffer rows = spare.asBuffer();
        for (int y = 0; y < height; y++) {
            whole.put(y * strideBytes, rows, y * padded, 4 * width);
        }
    }

    private void scale(SwsContext ready, AVFrame frame, BytePointer target, int strideBytes) {
        planes.put(0, target);
        strides.put(0, strideBytes);
        swscale.sws_scale(ready, frame.data(), frame.linesize(), 0, frame.height(), planes, strides);
    }

    private SwsContext scalerFor(AVFrame frame, String name) throws ClipException {
        Setting wanted = settingOf(frame);
        SwsContext current = scaler;
        if (current != null && wanted.equals(setting)) {
            return current;
        }
        free();
        SwsContext fresh = swscale.sws_getContext(
                wanted.width(),
                wanted.height(),
                wanted.format(),
                width,
                height,
                avutil.AV_PIX_FMT_BGRA,
                swscale.SWS_BILINEAR,
                (SwsFilter) null,
                (SwsFilter) null,
                (DoublePointer) null);
        if (fresh == null) {
            throw new ClipException(
                    Reason.UNREADABLE_FRAME,
                    "The pictures of " + name
                            + " are of a kind that cannot be shown; convert the file to H.264 first.");
        }
        swscale.sws_setColorspaceDetails(
                fresh,
                swscale.sws_getCoefficients(wanted.matrix()),
                wanted.full() ? 1 : 0,
                swscale.sws_getCoefficients(swscale.SWS_CS_DEFAULT),
                1,
                0,
                UNIT,
                UNIT);
        AVPixFmtDescriptor kind = avutil.av_pix_fmt_desc_get(wanted.format());
        opaque = kind == null || (kind.flags() & avutil.AV_PIX_FMT_FLAG_ALPHA) == 0;
        scaler = fresh;
        setting = wanted;
        return fresh;
    }

    private static Setting settingOf(AVFrame frame) {
        return new Setting(frame.width(), frame.height(), frame.format(), matrixOf(frame), fullRange(frame));
    }

    static boolean fullRange(AVFrame frame) {
        int format = frame.format();
        boolean jpeg = format == avutil.AV_PIX_FMT_YUVJ420P
                || format == avutil.AV_PIX_FMT_YUVJ422P
                || format == avutil.AV_PIX_FMT_YUVJ444P
                || format == avutil.AV_PIX_FMT_YUVJ440P
                || format == avutil.AV_PIX_FMT_YUVJ411P;
        return jpeg || frame.color_range() == avutil.AVCOL_RANGE_JPEG;
    }

    /** The matrix of its tags, or by the number of lines where there are none. */
    static int matrixOf(AVFrame frame) {
        int matrix = frame.colorspace();
        boolean untagged = matrix == avutil.AVCOL_SPC_UNSPECIFIED || matrix == avutil.AVCOL_SPC_RESERVED;
        return untagged ? matrixFor(frame.height()) : matrix;
    }

    static int matrixFor(int lines) {
        return lines < HD_LINES ? swscale.SWS_CS_ITU601 : swscale.SWS_CS_ITU709;
    }

    private void free() {
        if (scaler != null) {
            swscale.sws_freeContext(scaler);
            scaler = null;
            setting = null;
        }
    }

    @Override
    public void close() {
        free();
        planes.close();
        strides.close();
        spare.close();
    }
}
