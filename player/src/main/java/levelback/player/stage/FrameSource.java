package levelback.player.stage;

import java.nio.ByteBuffer;
import levelback.clips.decode.FrameReader;
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

    /** Gives one frame after another; used and closed by one thread. */
    interface Reader extends AutoCloseable {
        /** Fills a direct buffer with frame {@code frame}: BGRA, stored size and orientation, rows packed. */
        void read(int frame, ByteBuffer bgra) throws ClipException;

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
                FrameReader reader = clip.reader();
                int strideBytes = 4 * clip.facts().width();
                return new Reader() {
                    @Override
                    public void read(int frame, ByteBuffer bgra) throws ClipException {
                        reader.readBgra(frame, bgra, strideBytes);
                    }

                    @Override
                    public void close() {
                        reader.close();
                    }
                };
            }
        };
    }
}
