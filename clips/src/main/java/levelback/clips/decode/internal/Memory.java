package levelback.clips.decode.internal;

import java.util.concurrent.atomic.AtomicInteger;
import org.bytedeco.javacpp.Pointer;

/** What the decoded pictures of a reader may weigh. Thread-safe. */
public interface Memory {

    /** A quarter of the machine's memory, at most 1.5 GB, for all clips on show together. */
    long ON_SHOW_BYTES = Math.min(1_500_000_000L, Pointer.totalPhysicalBytes() / 4);

    /** Bytes at this moment. */
    long bytes();

    /** A reader begins to use it. */
    default void open() {}

    /** The reader is closed. */
    default void close() {}

    /** A bound of one's own, never more than a sixteenth of the machine's memory. */
    static Memory ofBytes(long bytes) {
        long most = Math.min(bytes, Pointer.totalPhysicalBytes() / 16);
        return () -> most;
    }

    /** An equal share of what there is for clips on show. */
    static Memory shared() {
        return new Memory() {
            @Override
            public long bytes() {
                return ON_SHOW_BYTES / Math.max(1, Shared.READERS.get());
            }

            @Override
            public void open() {
                Shared.READERS.incrementAndGet();
            }

            @Override
            public void close() {
                Shared.READERS.decrementAndGet();
            }
        };
    }

    /** Readers that share. */
    final class Shared {
        private static final AtomicInteger READERS = new AtomicInteger();

        private Shared() {}
    }
}
