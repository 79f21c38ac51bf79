package levelback.clips.look;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.OptionalLong;

/** What a process holds in memory, where the system says it without another program (Linux). */
final class ResidentMemory {

    /** The second number of {@code statm} counts pages (proc(5)); 4 KiB on every system the program is built for. */
    private static final int PAGE_BYTES = 4096;

    private static final Path PROC = Path.of("/proc");

    private ResidentMemory() {}

    static OptionalLong of(long pid) {
        try {
            String[] pages = Files.readString(PROC.resolve(pid + "/statm")).split(" ", 3);
            return OptionalLong.of(Long.parseLong(pages[1]) * PAGE_BYTES);
        } catch (IOException | RuntimeException notThere) {
            return OptionalLong.empty();
        }
    }
}
