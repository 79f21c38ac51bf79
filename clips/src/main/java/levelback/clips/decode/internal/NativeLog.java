package levelback.clips.decode.internal;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
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

    /** Strong reference: the native side keeps only the address. */
    private static final LogCallback KEEPER = new LogCallback() {
        @Override
        public void call(int level, BytePointer message) {
            List<String> lines = LINES.get();
            if (lines.size() < MOST_LINES && message != null) {
                lines.add(message.getString(StandardCharsets.UTF_8).strip());
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
