package levelback.clips.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.bytedeco.javacpp.Pointer;

/** The most memory that this process has had resident: from the kernel where it says so, else what it has now. */
final class PeakMemory {

    private static final double MIB = 1 << 20;

    private PeakMemory() {}

    static double mebibytes() {
        try {
            for (String line : Files.readAllLines(Path.of("/proc/self/status"))) {
                if (line.startsWith("VmHWM:")) {
                    return Long.parseLong(line.replaceAll("\\D", "")) / 1024.0;
                }
            }
        } catch (IOException | NumberFormatException notLinux) {
            // falls through to what every system can say
        }
        return Pointer.physicalBytes() / MIB;
    }
}
