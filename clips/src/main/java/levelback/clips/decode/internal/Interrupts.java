package levelback.clips.decode.internal;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.BooleanSupplier;
import org.bytedeco.ffmpeg.avformat.AVFormatContext;
import org.bytedeco.ffmpeg.avformat.AVIOInterruptCB;
import org.bytedeco.javacpp.Pointer;

/**
 * Lets a read be cancelled. One native callback serves every open file and finds its file by number, because only a few
 * callbacks of a kind can exist at a time.
 */
final class Interrupts {

    private static final Map<Long, BooleanSupplier> CANCELLED = new ConcurrentHashMap<>();
    private static final AtomicLong NEXT = new AtomicLong(1);

    private static final class Ask extends AVIOInterruptCB.Callback_Pointer {
        @Override
        public int call(Pointer name) {
            BooleanSupplier cancelled = name == null ? null : CANCELLED.get(name.address());
            return cancelled != null && cancelled.getAsBoolean() ? 1 : 0;
        }
    }

    private static final Ask ASK = new Ask();

    private Interrupts() {}

    static long watch(AVFormatContext format, BooleanSupplier cancelled) {
        long name = NEXT.getAndIncrement();
        CANCELLED.put(name, cancelled);
        format.interrupt_callback().callback(ASK).opaque(new PacketName(name));
        return name;
    }

    static void forget(long name) {
        CANCELLED.remove(name);
    }
}
