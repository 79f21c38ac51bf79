package levelback.clips.decode.internal;

import java.nio.file.Path;
import java.util.function.BooleanSupplier;
import levelback.clips.open.ClipException;

/** One pass over the packets of a file, nothing decoded: what an index costs. */
public final class PacketScan {

    private PacketScan() {}

    /** Opens, scans and closes a file; gives how many packets its picture stream has. */
    public static int packets(Path file, BooleanSupplier cancelled) throws ClipException {
        try (MediaFile media = MediaFile.open(file, cancelled)) {
            return PacketList.scan(media, cancelled).count();
        }
    }
}
