package levelback.player.shell;

import java.util.concurrent.CountDownLatch;
import java.util.logging.Level;
import java.util.logging.Logger;
import javafx.application.Platform;
import levelback.player.work.CannotBeDone;

/** Starts JavaFX once, on the screen or, where there is none, drawing into memory. */
final class Toolkit {

    // Loggers are weakly held: without this field the level would be forgotten before JavaFX asks for it.
    private static final Logger JAVAFX = Logger.getLogger("javafx");
    private static boolean started;

    private Toolkit() {}

    /**
     * Starts JavaFX if it is not running.
     *
     * @param screenWanted false draws into memory even where there is a screen
     * @throws CannotBeDone naming the packages to install where system libraries are missing
     */
    static synchronized void start(boolean screenWanted) {
        if (started) {
            return;
        }
        if (System.getProperty("glass.platform") == null
                && System.getProperty("os.name", "")
                        .toLowerCase(java.util.Locale.ROOT)
                        .contains("linux")
                && !(screenWanted && SystemLibraries.hasScreen(System.getenv()))) {
            System.setProperty("glass.platform", "Monocle");
            System.setProperty("monocle.platform", "Headless");
            System.setProperty("prism.order", "sw");
            System.setProperty("headless.geometry", "2560x1600-32");
        }
        SystemLibraries.missing().ifPresent(sentence -> {
            throw new CannotBeDone(sentence);
        });
        // The class path is meant; JavaFX warns about it on each start.
        JAVAFX.setLevel(Level.SEVERE);
        CountDownLatch up = new CountDownLatch(1);
        try {
            Platform.startup(up::countDown);
        } catch (IllegalStateException alreadyRunning) {
            up.countDown();
        } catch (UnsupportedOperationException noScreen) {
            throw new CannotBeDone("The screen named by DISPLAY cannot be opened; start Levelback from the desktop, or"
                    + " without DISPLAY to use the commands.");
        }
        try {
            up.await();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new CannotBeDone("Levelback was stopped before its window opened.");
        }
        Platform.setImplicitExit(false);
        started = true;
    }
}
