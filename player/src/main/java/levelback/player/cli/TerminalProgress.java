package levelback.player.cli;

import java.io.PrintWriter;
import java.util.Locale;

/** One line of progress that overwrites itself; silent where standard error is no terminal. Thread-safe. */
final class TerminalProgress {
    private static final long NANOS_BETWEEN = 100_000_000;
    private static final int WIDTH = 60;

    private final PrintWriter err;
    private final boolean terminal;
    private long last;
    private boolean shown;

    @SuppressWarnings("SystemConsoleNull") // Java 17; a newer one would show progress in a pipe too
    TerminalProgress(PrintWriter err) {
        this.err = err;
        this.terminal = System.console() != null;
    }

    /**
     * @param stage what is being done
     * @param fractionDone in [0, 1]
     */
    synchronized void at(String stage, double fractionDone) {
        long now = System.nanoTime();
        if (!terminal || (shown && now - last < NANOS_BETWEEN)) {
            return;
        }
        last = now;
        shown = true;
        String line = String.format(Locale.ROOT, "%s: %.0f %%", stage, 100 * Math.min(1, fractionDone));
        err.print("\r" + line + " ".repeat(Math.max(0, WIDTH - line.length())));
        err.flush();
    }

    /** Takes the line away. */
    synchronized void clear() {
        if (shown) {
            err.print("\r" + " ".repeat(WIDTH) + "\r");
            err.flush();
            shown = false;
        }
    }
}
