package levelback.player.stage;

import java.nio.ByteBuffer;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import levelback.clips.decode.Span;
import levelback.clips.open.Clip;
import levelback.clips.open.ClipException;

/**
 * The frames of one recording as the stage needs them. A port, so that the feed can be tested without a film.
 *
 * <p>Safe to share; the reader it opens belongs to the thread that opened it.
 */
public interface FrameSource {

    /** Frames, at least 1. */
    int frameCount();

    /** Time of a frame in microseconds on the stream's own clock. */
    long timeUs(int frame);

    /** Stored width in pixels. */
    int widthPx();

    /** Stored height in pixels. */
    int heightPx();

    /** A reader for the calling thread. */
    Reader open() throws ClipException;

    /**
     * A reader for the calling thread.
     *
     * @param gone polled by every read, from any thread: once true, reading fails at once
     */
    default Reader open(BooleanSupplier gone) throws ClipException {
        return open();
    }

    /** Gives one frame after another; used and closed by one thread. */
    interface Reader extends AutoCloseable {
        /** Fills a direct buffer with frame {@code frame}: BGRA, stored size and orientation, rows packed. */
        void read(int frame, ByteBuffer bgra) throws ClipException;

        /**
         * As {@link #read(int, ByteBuffer)}, and can be called off.
         *
         * @param stop polled between decoded pictures
         * @throws ClipException with {@link ClipException.Reason#CANCELLED} when called off
         */
        default void read(int frame, ByteBuffer bgra, BooleanSupplier stop) throws ClipException {
            read(frame, bgra);
        }

        /** Whether it keeps decoded pictures and decodes ahead by itself, so that its user need not. */
        default boolean readsAhead() {
            return false;
        }

        /**
         * Decodes ahead while nobody asks for a frame.
         *
         * @param stop polled between decoded pictures
         * @return false when there is nothing left to do until another frame is asked for
         */
        default boolean ahead(BooleanSupplier stop) {
            return false;
        }

        /** Says which pass is on show, to be kept decoded, and which is likely to come next. */
        default void passes(Optional<Span> pass, Optional<Span> next) {}

        @Override
        void close();
    }

    /** The frames of a clip. */
    static FrameSource of(Clip clip) {
        return new FrameSource() {
            @Override
            public int frameCount() {
                return clip.index().frames().size();
            }

            @Override
            public long timeUs(int frame) {
                return clip.index().frames().get(frame).timeUs();
            }

            @Override
            public int widthPx() {
                return clip.facts().width();
            }

            @Override
            public int heightPx() {
                return clip.facts().height();
            }

            @Override
            public Reader open() throws ClipException {
                return open(() -> false);
            }

            @Override
            public Reader open(BooleanSupplier gone) throws ClipException {
                return new ClipReader(clip.readerOnShow(gone), 4 * clip.facts().width());
            }
        };
    }
}
