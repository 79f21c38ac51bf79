package levelback.player.stage;

import java.nio.ByteBuffer;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * One decoded frame in a pooled buffer. Whoever gets one holds it and must {@link #release()} it once; the buffer goes back
 * to its pool when nobody holds it. The pixels don't change while it is held.
 */
public final class Picture {

    private final int frame;
    private final ByteBuffer bgra;
    private final PicturePool pool;
    private final AtomicInteger holders = new AtomicInteger(1);

    Picture(int frame, ByteBuffer bgra, PicturePool pool) {
        this.frame = frame;
        this.bgra = bgra;
        this.pool = pool;
    }

    /** Number of the frame in the recording. */
    public int frame() {
        return frame;
    }

    /** Its pixels, rows packed; a view of its own, so that reading moves no shared position. */
    public ByteBuffer bgra() {
        return bgra.asReadOnlyBuffer().rewind();
    }

    Picture hold() {
        holders.incrementAndGet();
        return this;
    }

    /** Lets go of it. */
    public void release() {
        int left = holders.decrementAndGet();
        if (left == 0) {
            pool.giveBack(bgra);
        } else if (left < 0) {
            throw new IllegalStateException("frame " + frame + " released twice");
        }
    }
}
