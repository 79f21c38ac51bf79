package levelback.clips.decode.internal;

import java.nio.ByteBuffer;
import levelback.clips.decode.Field;
import levelback.clips.open.ClipException;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.global.avutil;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.Pointer;

/** One field of a frame: every second line of each plane, seen without copying. An odd last line is the top field's. */
final class FieldPicture implements AutoCloseable {

    private static final int MOST_PLANES = 4;

    private final int height;
    private final AVFrame view = avutil.av_frame_alloc();
    private final Planes planes = new Planes();
    private final BgraPicture top;
    private final BgraPicture bottom;

    /**
     * @param width of the frames that {@link #convert} gives
     * @param height of the frames that {@link #convert} gives
     */
    FieldPicture(int width, int height) {
        this.height = height;
        this.top = new BgraPicture(width, (height + 1) / 2);
        this.bottom = new BgraPicture(width, Math.max(1, height / 2));
    }

    String md5(AVFrame frame, Field field) {
        try {
            return planes.md5(see(frame, field));
        } finally {
            forget();
        }
    }

    void convert(AVFrame frame, Field field, ByteBuffer into, int strideBytes, String name) throws ClipException {
        int first = field == Field.TOP ? 0 : 1;
        int lines = Math.max(1, (height + 1 - first) / 2);
        ByteBuffer dense = ByteBuffer.allocateDirect(strideBytes * lines);
        try {
            (field == Field.TOP ? top : bottom).convert(see(frame, field), dense, strideBytes, name);
        } finally {
            forget();
        }
        for (int y = 0; y < height; y++) {
            int above = Math.min(Math.max(0, Math.floorDiv(y - first, 2)), lines - 1);
            boolean own = (y - first) % 2 == 0;
            int below = own || y < first ? above : Math.min(above + 1, lines - 1);
            if (above == below) {
                into.put(y * strideBytes, dense, above * strideBytes, strideBytes);
            } else {
                between(dense, above * strideBytes, below * strideBytes, into, y * strideBytes, strideBytes);
            }
        }
    }

    private static void between(ByteBuffer from, int above, int below, ByteBuffer into, int at, int bytes) {
        for (int i = 0; i < bytes; i++) {
            into.put(at + i, (byte) (((from.get(above + i) & 0xFF) + (from.get(below + i) & 0xFF) + 1) / 2));
        }
    }

    private AVFrame see(AVFrame frame, Field field) {
        avutil.av_frame_copy_props(view, frame);
        boolean upper = field == Field.TOP;
        view.width(frame.width()).height((frame.height() + (upper ? 1 : 0)) / 2).format(frame.format());
        for (int plane = 0; plane < MOST_PLANES; plane++) {
            BytePointer data = frame.data(plane);
            if (data == null || data.isNull()) {
                break;
            }
            int stride = frame.linesize(plane);
            view.data(plane, upper ? data : data.getPointer(BytePointer.class, stride));
            view.linesize(plane, 2 * stride);
        }
        return view;
    }

    /** The view owns nothing. */
    private void forget() {
        for (int plane = 0; plane < MOST_PLANES; plane++) {
            view.data(plane, new BytePointer((Pointer) null));
        }
        avutil.av_frame_unref(view);
    }

    @Override
    public void close() {
        avutil.av_frame_free(view);
        planes.close();
        top.close();
        bottom.close();
    }
}
