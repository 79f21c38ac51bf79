package levelback.player.shell;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import javafx.application.Platform;
import levelback.player.desk.Desk;
import levelback.player.work.CannotBeDone;
import levelback.player.work.DrawDemo;

/**
 * The demo herd in a folder of its own, drawn on first use.
 *
 * @param folder where it lies; what the demo did not make there is never touched
 */
record DemoHerd(Path folder) {

    /** Opens the demo herd, drawing it first where it is not there; the desk stays usable meanwhile. */
    void open(DeskShell desk) {
        Path book = folder.resolve("demo.levelback");
        Thread drawing = new Thread(() -> draw(desk, book), "levelback-demo");
        drawing.setDaemon(true);
        desk.message(Words.of("demo.job"));
        drawing.start();
    }

    private void draw(DeskShell desk, Path book) {
        if (Files.isRegularFile(book)) {
            Platform.runLater(() -> desk.openBook(book, false));
            return;
        }
        AtomicBoolean stopped = new AtomicBoolean();
        Desk.Job job = job(desk, () -> stopped.set(true));
        try {
            String version = Optional.ofNullable(DemoHerd.class.getPackage().getImplementationVersion())
                    .orElse("");
            Path made = new DrawDemo(version)
                    .draw(folder, true, (stage, fraction) -> {
                        if (stopped.get()) {
                            throw new CannotBeDone(Words.of("demo.stopped"));
                        }
                        job.progress(fraction);
                    })
                    .book();
            Platform.runLater(() -> desk.openBook(made, false));
        } catch (Throwable failure) { // boundary of the thread: native load errors too
            desk.tell(failure);
        } finally {
            job.close();
        }
    }

    private static Desk.Job job(DeskShell desk, Runnable stop) {
        java.util.concurrent.CompletableFuture<Desk.Job> job = new java.util.concurrent.CompletableFuture<>();
        Platform.runLater(() -> job.complete(desk.job(Words.of("demo.job"), stop)));
        return job.join();
    }
}
