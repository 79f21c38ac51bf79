package levelback.clips.decode.internal;

import java.nio.ByteBuffer;
import levelback.clips.decode.FrameColour;
import levelback.clips.open.ClipException;
import levelback.clips.open.ClipException.Reason;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.global.avutil;
import org.bytedeco.ffmpeg.global.swscale;
import org.bytedeco.ffmpeg.swscale.SwsContext;
import org.bytedeco.ffmpeg.swscale.SwsFilter;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.DoublePointer;
import org.jspecify.annotations.Nullable;

/**
 * Converts a decoded picture to 8-bit 4:2:0 of limited range, what an encoder takes, with the matrix of its stream: one
 * that is that already is copied byte for byte.
 */
final class I420Picture implements AutoCloseable {

    private static final int UNIT = 1 << 16;

    private record Setting(int width, int height, int format, int matrix, boolean full, int toWidth, int toHeight) {}

    private final AVFrame target = avutil.av_frame_alloc();
    private @Nullable Setting setting;
    private @Nullable SwsContext scaler;

    FrameColour convert(AVFrame frame, ByteBuffer into, int width, int height, String name) throws ClipException {
        int chroma = (width + 1) / 2 * ((height + 1) / 2);
        if (!into.isDirect() || into.capacity() < (long) width * height + 2L * chroma) {
            throw new IllegalArgumentException("need a direct buffer for " + width + " by " + height + ": " + into);
        }
        int source = BgraPicture.matrixOf(frame);
        int matrix = source == avutil.AVCOL_SPC_RGB ? BgraPicture.matrixFor(height) : source;
        SwsContext ready = scalerFor(frame, matrix, width, height, name);
        swscale.sws_scale(ready, frame.data(), frame.linesize(), 0, frame.height(), target.data(), target.linesize());
        ByteBuffer whole = into.duplicate();
        whole.clear();
        rows(0, width, height, whole, 0);
        rows(1, (width + 1) / 2, (height + 1) / 2, whole, width * height);
        rows(2, (width + 1) / 2, (height + 1) / 2, whole, width * height + chroma);
        return new FrameColour(matrix, frame.color_primaries(), frame.color_trc());
    }

    private void rows(int plane, int width, int height, ByteBuffer into, int at) {
        int stride = target.linesize(plane);
        ByteBuffer from = new BytePointer(target.data(plane))
                .capacity((long) stride * height)
                .asBuffer();
        for (int y = 0; y < height; y++) {
            into.put(at + y * width, from, y * stride, width);
        }
    }

    private SwsContext scalerFor(AVFrame frame, int matrix, int width, int height, String name) throws ClipException {
        Setting wanted = new Setting(
                frame.width(), frame.height(), frame.format(), matrix, BgraPicture.fullRange(frame), width, height);
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
                avutil.AV_PIX_FMT_YUV420P,
                swscale.SWS_BICUBIC | swscale.SWS_ACCURATE_RND | swscale.SWS_FULL_CHR_H_INP,
                (SwsFilter) null,
                (SwsFilter) null,
                (DoublePointer) null);
        if (fresh == null) {
            throw new ClipException(
                    Reason.UNREADABLE_FRAME,
                    "The pictures of " + name
                            + " are of a kind that cannot be copied; convert the file to H.264 first.");
        }
        scaler = fresh;
        setting = wanted;
        swscale.sws_setColorspaceDetails(
                fresh,
                swscale.sws_getCoefficients(matrix),
                wanted.full() ? 1 : 0,
                swscale.sws_getCoefficients(matrix),
                0,
                0,
                UNIT,
                UNIT);
        avutil.av_frame_unref(target);
        target.width(width).height(height).format(avutil.AV_PIX_FMT_YUV420P);
        if (avutil.av_frame_get_buffer(target, 0) < 0) {
            throw new OutOfMemoryError("a picture of " + width + " by " + height);
        }
        return fresh;
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
        avutil.av_frame_free(target);
    }
}
