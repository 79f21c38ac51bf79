package levelback.player.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import levelback.player.work.BadInput;

/** What may be named as the file to write. */
final class Outputs {

    private Outputs() {}

    /**
     * @param what it is to be, such as {@code the PNG file}
     * @throws BadInput if it is a folder or the recording itself
     */
    static void requireOther(Path out, Path recording, String what) throws IOException {
        if (Files.isDirectory(out)) {
            throw new BadInput(Sentences.onOneLine(out.toString()) + " is a folder; name " + what + " to write.");
        }
        if (Files.exists(out) && Files.exists(recording) && Files.isSameFile(out, recording)) {
            throw new BadInput("--out names the recording itself, which is never written to; name another file.");
        }
    }
}
