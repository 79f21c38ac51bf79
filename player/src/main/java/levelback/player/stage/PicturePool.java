package levelback.player.stage;

import java.nio.ByteBuffer;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * Direct buffers of one size, used again and again, so that walking through a film makes no garbage. Bounded by its users:
 * the feed holds at most its cache and its queue. Thread-safe, without a lock.
 */
final class PicturePool {

    private final int bytes;
    private final ConcurrentLinkedQueue<ByteBuffer> free = new ConcurrentLinkedQueue<>();
    private final AtomicInteger made = new AtomicInteger();

    PicturePool(int bytes) {
        this.bytes = bytes;
    }

    ByteBuffer take() {
        ByteBuffer buffer = free.poll();
        if (buffer != null) {
            return buffer;
        }
        made.incrementAndGet();
        return ByteBuffer.allocateDirect(bytes);
    }

    void giveBack(ByteBuffer buffer) {
        free.add(buffer.clear());
    }

    /** Buffers ever made. */
    int made() {
        return made.get();
    }
}
