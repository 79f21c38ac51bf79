package levelback.player.shell;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.logging.FileHandler;
import java.util.logging.Handler;
import java.util.logging.Logger;
import java.util.logging.SimpleFormatter;

/** Sends what the program logs to a file, so that no trace of it reaches the terminal. */
final class FailureLog {

    private static final int LARGEST_BYTES = 2_000_000;
    private static final int FILES = 3;

    // Loggers are weakly held: without this field the handlers could come back.
    private static final Logger ROOT = Logger.getLogger("");

    private FailureLog() {}

    /** From now on logs to {@code folder} alone; to nowhere where it may not be written. Blocks. */
    static void only(Path folder) {
        for (Handler handler : ROOT.getHandlers()) {
            ROOT.removeHandler(handler);
        }
        try {
            Files.createDirectories(folder);
            FileHandler file =
                    new FileHandler(folder.resolve("levelback.%g.log").toString(), LARGEST_BYTES, FILES, true);
            file.setFormatter(new SimpleFormatter());
            ROOT.addHandler(file);
        } catch (IOException | SecurityException e) {
            // The desk works without a log; there is no second place to say so.
            ROOT.setLevel(java.util.logging.Level.OFF);
        }
    }
}
