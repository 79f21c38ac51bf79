package levelback.player.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.util.Locale;
import levelback.clips.open.ClipException;
import levelback.player.work.BadInput;
import levelback.player.work.CannotBeDone;
import levelback.player.work.UserFolder;
import levelback.store.book.StoreException;

/** Turns whatever went wrong into one sentence and an exit status; never a stack trace on the terminal. */
final class Sentences {

    private static final int DONE_NOT = 1;
    private static final int BAD_INPUT = 2;

    private Sentences() {}

    /** Prints one sentence about a failure and returns the exit status. */
    static int tell(Throwable failure, PrintWriter err) {
        if (failure instanceof BadInput bad) {
            return say(err, bad, BAD_INPUT);
        }
        if (failure instanceof CannotBeDone cannot) {
            return say(err, cannot, DONE_NOT);
        }
        if (failure instanceof ClipException clip) {
            boolean notTheFile = clip.reason() == ClipException.Reason.CANNOT_WRITE
                    || clip.reason() == ClipException.Reason.CANCELLED;
            return say(err, clip, notTheFile ? DONE_NOT : BAD_INPUT);
        }
        if (failure instanceof StoreException store) {
            return say(err, store, BAD_INPUT);
        }
        if (failure instanceof InvalidPathException path) {
            err.println("\"" + onOneLine(path.getInput()) + "\" cannot be a file name here: " + localeAdvice());
            return BAD_INPUT;
        }
        if (failure instanceof UncheckedIOException wrapped && wrapped.getCause() != null) {
            return tell(wrapped.getCause(), err);
        }
        if (failure instanceof NoSuchFileException missing) {
            err.println("There is no file or folder " + onOneLine(missing.getFile()) + "; check the name.");
            return BAD_INPUT;
        }
        if (failure instanceof AccessDeniedException denied) {
            err.println(onOneLine(denied.getFile()) + " may not be read or written by you; check its permissions.");
            return DONE_NOT;
        }
        if (failure instanceof IOException io) {
            err.println(ofDisk(io));
            return DONE_NOT;
        }
        if (failure instanceof OutOfMemoryError) {
            err.println(
                    "There was not enough memory for this; close other programs, or start java with a larger -Xmx.");
            return DONE_NOT;
        }
        String where = keep(failure);
        err.println("Levelback met something it did not foresee ("
                + failure.getClass().getSimpleName() + ") and stopped" + where + ".");
        return DONE_NOT;
    }

    /** Text safe for one line of a terminal: control characters become a blank. */
    static String onOneLine(String text) {
        return text.replaceAll("\\p{Cntrl}+", " ").strip();
    }

    /**
     * In a locale without Unicode (such as {@code LC_ALL=C}) Java 17 hands over file names with their letters lost; the
     * file would be said to be missing, so say what is wrong instead.
     *
     * @throws BadInput naming the argument and what to set
     */
    static void requireReadableNames(String... args) {
        String encoding = System.getProperty("sun.jnu.encoding", "UTF-8").toUpperCase(Locale.ROOT);
        if (encoding.startsWith("UTF")) {
            return;
        }
        for (String arg : args) {
            if (arg.indexOf('\uFFFD') >= 0) {
                throw new BadInput("\"" + onOneLine(arg.replace('\uFFFD', '?'))
                        + "\" has letters that got lost on the way in: " + localeAdvice());
            }
        }
    }

    private static String localeAdvice() {
        return "the language setting of this terminal (" + System.getProperty("sun.jnu.encoding", "unknown")
                + ") carries plain ASCII names only; set LC_ALL=C.UTF-8 and run the command again.";
    }

    private static String ofDisk(IOException io) {
        String message = onOneLine(String.valueOf(io.getMessage()));
        if (message.contains("No space left")) {
            return "The disk is full; make room and run the command again.";
        }
        return "Reading or writing failed: " + message + ".";
    }

    private static int say(PrintWriter err, Throwable failure, int status) {
        err.println(onOneLine(String.valueOf(failure.getMessage())));
        return status;
    }

    /** Keeps the trace in the user's log, for a report of the fault. */
    private static String keep(Throwable failure) {
        try {
            Path folder = UserFolder.ofThisUser().log();
            Files.createDirectories(folder);
            Path log = folder.resolve("levelback.log");
            try (PrintWriter writer = new PrintWriter(
                    Files.newBufferedWriter(log, StandardOpenOption.CREATE, StandardOpenOption.APPEND))) {
                writer.println(Instant.now() + " " + Version.line());
                failure.printStackTrace(writer);
            }
            return "; " + log + " has the details";
        } catch (IOException | RuntimeException unwritable) {
            return "";
        }
    }
}
