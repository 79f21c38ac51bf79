package levelback.player.work;

import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import levelback.clips.decode.Span;
import levelback.clips.open.Clip;
import levelback.clips.open.ClipException;
import levelback.clips.open.IndexCache;
import levelback.clips.open.VerifyClip;

/**
 * Looks recordings through to their end while nobody needs the machine, so that nothing about them is taken on trust. One
 * thread with one decoder; the recording on show goes first, and one that had to wait goes on where it was.
 *
 * <p>Threading: all methods return at once and may be called from any thread.
 */
public final class VerifyInBackground implements AutoCloseable {

    /** So long after the last step nobody is stepping. */
    private static final long IDLE_NANOS = TimeUnit.MILLISECONDS.toNanos(1500);

    private static final long PAUSE_MS = 50;

    private final VerifyClip verify;
    private final ExecutorService thread;
    private final AtomicLong touchedNanos = new AtomicLong(System.nanoTime());
    private final AtomicLong newest = new AtomicLong();
    private volatile boolean closed;

    /** For this user. */
    public VerifyInBackground() {
        this(OpenRecording.indexes(UserFolder.ofThisUser()));
    }

    VerifyInBackground(IndexCache known) {
        this.verify = new VerifyClip(known, 1);
        this.thread = Executors.newSingleThreadExecutor(task -> {
            Thread own = new Thread(task, "verifying recordings");
            own.setDaemon(true);
            return own;
        });
    }

    /** The person steps or plays: wait a little. */
    public void touch() {
        touchedNanos.set(System.nanoTime());
    }

    /**
     * Verifies a clip in place of the one before.
     *
     * @param pass the span that is wanted first
     * @param found called on the background thread with the clip as it is for certain; not called where nothing was left to
     *     verify, or where it was stopped
     */
    public void verify(Clip clip, Span pass, Consumer<Clip> found) {
        long ticket = newest.incrementAndGet();
        if (clip.decoded() || closed) {
            return;
        }
        BooleanSupplier stopped = () -> closed || newest.get() != ticket;
        thread.execute(() -> {
            try {
                found.accept(verify.verify(clip, List.of(pass), done -> {}, () -> whenIdle(stopped)));
            } catch (ClipException stopsOrGone) {
                // goes on when it is asked for again; what can't be read is said where it is wanted
            } catch (RuntimeException | LinkageError e) { // task boundary
                System.getLogger(VerifyInBackground.class.getName())
                        .log(
                                System.Logger.Level.ERROR,
                                "verifying " + clip.facts().file(),
                                e);
            }
        });
    }

    /** Waits until nobody steps; true where it should stop. */
    private boolean whenIdle(BooleanSupplier stopped) {
        while (!stopped.getAsBoolean() && System.nanoTime() - touchedNanos.get() < IDLE_NANOS) {
            try {
                Thread.sleep(PAUSE_MS);
            } catch (InterruptedException closing) {
                Thread.currentThread().interrupt();
                return true;
            }
        }
        return stopped.getAsBoolean();
    }

    @Override
    public void close() {
        closed = true;
        thread.shutdown();
    }
}
