package levelback.player.work;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import levelback.clips.open.ClipException;
import levelback.clips.write.Still;

/** An exact frame of a recording as the bytes of a PNG; the same picture as the {@code still} command writes. */
final class StillPicture {

    private StillPicture() {}

    /** Blocking: reads the recording. */
    static byte[] png(Path recording, int frame) throws ClipException, IOException {
        Path still = Files.createTempFile("levelback-still", ".png");
        try {
            Still.write(OpenRecording.once(recording, () -> false), frame, still);
            return Files.readAllBytes(still);
        } finally {
            Files.deleteIfExists(still);
        }
    }
}
