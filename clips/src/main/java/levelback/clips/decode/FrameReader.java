package levelback.clips.decode;

import java.nio.ByteBuffer;
import java.util.Optional;
import java.util.function.BooleanSupplier;
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

    /**
     * As {@link #readBgra(int, ByteBuffer, int)}, and can be called off: what was decoded by then stays, and a later wish
     * goes on from there.
     *
     * @param stop polled between decoded pictures
     * @throws ClipException with {@link ClipException.Reason#CANCELLED} when called off
     */
    void readBgra(int frame, ByteBuffer bgra, int strideBytes, BooleanSupplier stop) throws ClipException;

    /**
     * Decodes a frame and converts it to 8-bit 4:2:0 of limited range, stored orientation, in the matrix of its stream.
     *
     * @param into direct buffer: the rows of Y, then those of U, then those of V, packed; chroma sides rounded up
     * @param width of the picture that is wanted
     * @param height of the picture that is wanted
     */
    FrameColour readI420(int frame, ByteBuffer into, int width, int height) throws ClipException;

    /** Which field of a frame is shown first. */
    Field firstField(int frame) throws ClipException;

    /** MD5 of one field of a frame, as FFmpeg's framemd5 behind its separatefields. */
    String md5(int frame, Field field) throws ClipException;

    /**
     * Decodes a frame and converts one field of it, its lines where they belong and each line between them the mean of its
     * neighbours: full height, BGRA, stored orientation.
     */
    void readBgra(int frame, Field field, ByteBuffer bgra, int strideBytes) throws ClipException;

    /** Decodes a frame and keeps it, so that asking for it next costs no decoding. */
    void decode(int frame) throws ClipException;

    /**
     * Says which pass is being scored: it stays decoded, and the one after it is decoded next, as far as there is room.
     * Where there is none for the whole pass, every k-th frame of it stays and the others are decoded ahead.
     *
     * @param pass the pass on show
     * @param next the pass that is likely to come after it
     */
    void passes(Optional<Span> pass, Optional<Span> next);

    /**
     * Decodes ahead while nobody asks for a frame: in the way the last frames were asked for, then the passes.
     *
     * @param stop polled between decoded pictures
     * @return false when there is nothing left to do until another frame is asked for
     */
    boolean ahead(BooleanSupplier stop);

    /** What its decoded pictures weigh, in bytes. */
    long bytesKept();

    @Override
    void close();
}
