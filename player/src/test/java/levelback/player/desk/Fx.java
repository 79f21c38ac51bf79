package levelback.player.desk;

import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import javafx.application.Platform;

/** Runs work on the JavaFX thread from a test. */
public final class Fx {
    private Fx() {}

    /** Starts the toolkit without a screen if it is not running. */
    public static synchronized void start() throws InterruptedException {
        CountDownLatch up = new CountDownLatch(1);
        try {
            Platform.startup(up::countDown);
            Platform.setImplicitExit(false);
        } catch (IllegalStateException running) {
            return;
        }
        if (!up.await(30, TimeUnit.SECONDS)) {
            throw new IllegalStateException("JavaFX did not start");
        }
    }

    /** The answer of {@code work}, computed on the JavaFX thread. */
    public static <T> T get(Callable<T> work) throws Exception {
        start();
        FutureTask<T> task = new FutureTask<>(work);
        Platform.runLater(task);
        return task.get(60, TimeUnit.SECONDS);
    }

    /** Runs {@code work} on the JavaFX thread and waits for it. */
    public static void run(Runnable work) throws Exception {
        get(() -> {
            work.run();
            return true;
        });
    }
}
