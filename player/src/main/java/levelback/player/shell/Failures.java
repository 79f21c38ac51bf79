package levelback.player.shell;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ExecutionException;
import levelback.clips.open.ClipException;
import levelback.player.work.BadInput;
import levelback.player.work.CannotBeDone;
import levelback.store.book.StoreException;

/** Turns a failure into one sentence; what nobody foresaw goes to the log with all its details. */
final class Failures {

    private final Path log;

    /** @param folder where the log is kept */
    Failures(Path folder) {
        log = folder.resolve("desk.log");
    }

    /** One sentence for a person. Blocks on the disk where the failure was not foreseen. */
    String sentence(Throwable failure) {
        Throwable cause = failure;
        while ((cause instanceof CompletionException
                        || cause instanceof ExecutionException
                        || cause instanceof java.io.UncheckedIOException)
                && cause.getCause() != null) {
            cause = cause.getCause();
        }
        if (cause instanceof StoreException
                || cause instanceof BadInput
                || cause instanceof CannotBeDone
                || cause instanceof ClipException) {
            return String.valueOf(cause.getMessage());
        }
        keep(cause);
        return Words.of("failure.unforeseen", cause.getClass().getSimpleName(), log);
    }

    private void keep(Throwable failure) {
        StringWriter text = new StringWriter();
        failure.printStackTrace(new PrintWriter(text, true));
        try {
            Files.createDirectories(log.toAbsolutePath().getParent());
            Files.writeString(
                    log,
                    Instant.now() + " " + text,
                    StandardCharsets.UTF_8,
                    StandardOpenOption.CREATE,
                    StandardOpenOption.APPEND);
        } catch (IOException diskFull) {
            // The sentence still reaches the person; there is no second place to write to.
            failure.addSuppressed(diskFull);
        }
    }
}
