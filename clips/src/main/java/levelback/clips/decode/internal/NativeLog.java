package levelback.clips.decode.internal;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import org.bytedeco.ffmpeg.avutil.LogCallback;
import org.bytedeco.ffmpeg.global.avutil;
import org.bytedeco.javacpp.BytePointer;

/**
 * What FFmpeg says while it works: kept for the sentence a person gets, never printed. Each thread has a short log of its
 * own, so that two recordings don't mix.
 */
public final class NativeLog {

    private static final int MOST_LINES = 50;

    private static final ThreadLocal<List<String>> LINES = ThreadLocal.withInitial(ArrayList::new);

    /**
     * What decoders and readers say of whole films too, as some cameras make them: references that a camera counts in its
     * own way, and pictures before the first that can be decoded.
     */
    private static final List<String> HARMLESS = List.of(
            "co located POCs unavailable",
            "mmco:",
            "number of reference frames",
            "non-existing PPS",
            "non-existing SPS",
            "no frame!",
            "Application provided",
            "Error during demuxing");

    /** Lines that tell of damage, by thread and in all. */
    private static final ThreadLocal<int[]> COMPLAINTS = ThreadLocal.withInitial(() -> new int[1]);

    private static final AtomicInteger ALL_COMPLAINTS = new AtomicInteger();

    /** Strong reference: the native side keeps only the address. */
    private static final LogCallback KEEPER = new LogCallback() {
        @Override
        public void call(int level, BytePointer message) {
            if (message == null) {
                return;
            }
            String line = message.getString(StandardCharsets.UTF_8).strip();
            List<String> lines = LINES.get();
            if (lines.size() < MOST_LINES) {
                lines.add(line);
            }
            if (HARMLESS.stream().noneMatch(line::contains)) {
                COMPLAINTS.get()[0]++;
                ALL_COMPLAINTS.incrementAndGet();
            }
        }
    };

    static {
        avutil.av_log_set_level(avutil.AV_LOG_ERROR);
        avutil.setLogCallback(KEEPER);
    }

    private NativeLog() {}

    /** Silences FFmpeg's own printing (for good) and forgets what this thread has heard so far. */
    public static void start() {
        LINES.get().clear();
    }

    /** How many lines that tell of damage this thread has heard in its life. */
    static int complaints() {
        return COMPLAINTS.get()[0];
    }

    /** How many such lines the program has heard in all, on whatever thread: a decoder's own threads speak too. */
    static int complaintsOnAnyThread() {
        return ALL_COMPLAINTS.get();
    }

    /** Whether this thread has heard a line with these words since {@link #start()}. */
    public static boolean heard(String words) {
        return LINES.get().stream().anyMatch(line -> line.contains(words));
    }

    /** The last line this thread has heard since {@link #start()}. */
    public static Optional<String> last() {
        List<String> lines = LINES.get();
        return lines.isEmpty() ? Optional.empty() : Optional.of(lines.get(lines.size() - 1));
    }

    /** FFmpeg's words for one of its error numbers. */
    public static String words(int error) {
        try (BytePointer text = new BytePointer(avutil.AV_ERROR_MAX_STRING_SIZE)) {
            avutil.av_strerror(error, text, avutil.AV_ERROR_MAX_STRING_SIZE);
            // The buffer is longer than the words, and what lies behind their end is anything.
            String whole = text.getString(StandardCharsets.UTF_8);
            int end = whole.indexOf(0);
            return end < 0 ? whole : whole.substring(0, end);
        }
    }
}
