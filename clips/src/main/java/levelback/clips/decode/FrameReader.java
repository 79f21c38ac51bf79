package levelback.clips.decode;

import java.nio.ByteBuffer;
import levelback.clips.open.ClipException;

/** Exact frames in any order. Used and closed by one thread; every native object it holds goes with {@link #close()}. */
public interface FrameReader extends AutoCloseable {

    /** MD5 of the picture in the stream's own pixel format and stored orientation, rows packed, as FFmpeg's framemd5. */
    String md5(int frame) throws ClipException;

    /**
     * Decodes a frame and converts it straight into a caller's direct buffer: BGRA, stored size and orientation, right
     * matrix and range.
     *
     * @param frame number in presentation order
     * @param bgra direct buffer of at least {@code strideBytes * height} bytes; position and limit are left alone
     * @param strideBytes bytes from one row to the next, at least 4 × width
     */
    void readBgra(int frame, ByteBuffer bgra, int strideBytes) throws ClipException;

    @Override
    void close();
}
