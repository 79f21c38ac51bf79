package levelback.player.stage;

import java.util.Optional;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import levelback.clips.decode.Span;
import levelback.clips.open.ClipException;
import org.jspecify.annotations.Nullable;

/**
 * Feeds the screen with exact frames. One thread alone opens, reads and closes the film; commands arrive in a slot where
 * the newest wins; pictures leave through a bounded queue, each with the moment at which it is due.
 *
 * <p>Threading: {@link #show}, {@link #walk}, {@link #poll} and {@link #close} never wait and take no lock; call them from
 * one thread (the screen's). Results of a superseded command are dropped.
 */
public final class FrameFeed implements AutoCloseable {

    /** What the pictures ready for the screen may weigh; the decoded ones are the reader's. */
    private static final long CACHE_BYTES = 160L << 20;

    private static final int FEWEST_CACHED = 6;
    private static final int MOST_CACHED = 80;
    private static final long PAUSE_NANOS = 2_000_000;

    /** What {@link #poll} can give. */
    public sealed interface Shown {
        /** Number of the frame in the recording. */
        int frame();

        /**
         * A picture to show; release it after use.
         *
         * @param picture held for the caller
         */
        record Ready(Picture picture) implements Shown {
            @Override
            public int frame() {
                return picture.frame();
            }
        }

        /**
         * A frame that can't be read.
         *
         * @param frame its number
         * @param sentence why, for a person
         */
        record Unreadable(int frame, String sentence) implements Shown {}

        /**
         * A walk came to the end of its span and stands.
         *
         * @param frame where it stands
         */
        record Ended(int frame) implements Shown {}
    }

    private record Command(long ticket, int frame, @Nullable Walk walk, boolean backward) {}

    private record Passes(Optional<Span> pass, Optional<Span> next) {}

    private record Due(Command command, long dueNanos, Shown shown) {}

    private static final Command NOTHING_YET = new Command(0, 0, null, false);

    private final FrameSource source;
    private final PicturePool pool;
    private final FrameCache cache;
    private final int chunk;
    private final Thread thread;

    /** The newest command; written by the calling thread alone. */
    private volatile Command slot = NOTHING_YET;

    /** The passes that should stay decoded; written by the calling thread alone. */
    private volatile Passes passes = new Passes(Optional.empty(), Optional.empty());

    private final ConcurrentLinkedQueue<Due> queue = new ConcurrentLinkedQueue<>();
    private final AtomicInteger queued = new AtomicInteger();
    private final AtomicLong dropped = new AtomicLong();
    private volatile boolean closed;

    // Of the calling thread alone.
    private long newest;
    private long lastTicket;
    private int lastFrame;

    /** Starts the decoder thread. */
    public FrameFeed(FrameSource source, String name) {
        this.source = source;
        long frameBytes = 4L * source.widthPx() * source.heightPx();
        long budget = Math.min(CACHE_BYTES, Runtime.getRuntime().maxMemory() / 4);
        int cached = (int) Math.max(FEWEST_CACHED, Math.min(MOST_CACHED, budget / frameBytes));
        this.pool = new PicturePool(Math.toIntExact(frameBytes));
        this.cache = new FrameCache(cached);
        this.chunk = Math.max(3, cached / 2);
        this.thread = new Thread(this::run, "frames of " + name);
        thread.setDaemon(true);
        thread.start();
    }

    /** Asks for one frame; the newest wish wins. */
    public void show(int frame) {
        int wanted = clamp(frame);
        boolean stepBack = wanted < lastFrame && lastFrame - wanted <= chunk;
        send(new Command(++newest, wanted, null, stepBack));
    }

    /** Walks from a frame; the newest wish wins. */
    public void walk(int frame, Walk walk) {
        int from = Math.max(walk.first(), Math.min(walk.last(), clamp(frame)));
        send(new Command(++newest, from, walk, walk.rate() < 0));
    }

    /** Says which pass is on show, to be kept decoded, and which is likely to come next. */
    public void passes(Optional<Span> pass, Optional<Span> next) {
        passes = new Passes(pass, next);
        LockSupport.unpark(thread);
    }

    private void send(Command command) {
        slot = command;
        LockSupport.unpark(thread);
    }

    /**
     * The newest thing that is due, if there is any. Older pictures of the same walk that were due as well are dropped and
     * counted. While steps come faster than pictures, the pictures on the way are shown; those of a walk that is over, and
     * any older than what was given last, are not.
     *
     * @param nowNanos {@link System#nanoTime()}
     */
    public Optional<Shown> poll(long nowNanos) {
        Due best = null;
        for (Due due = queue.peek(); due != null; due = queue.peek()) {
            boolean stale = due.command().walk() == null
                    ? due.command().ticket() < lastTicket
                    : due.command().ticket() != newest;
            if (!stale && due.dueNanos() - nowNanos > 0) {
                break;
            }
            if (!stale && best != null && due.shown() instanceof Shown.Ended) {
                break; // at the next call, so that the last picture is not lost
            }
            queue.remove();
            queued.decrementAndGet();
            if (stale) {
                letGo(due.shown());
                continue;
            }
            if (best != null) {
                letGo(best.shown());
                if (due.command().walk() != null) {
                    dropped.incrementAndGet();
                }
            }
            best = due;
        }
        if (best == null) {
            return Optional.empty();
        }
        LockSupport.unpark(thread);
        lastTicket = best.command().ticket();
        lastFrame = best.shown().frame();
        return Optional.of(best.shown());
    }

    /** Pictures that were due but never shown because a later one was due as well, since the feed was opened. */
    public long dropped() {
        return dropped.get();
    }

    /** Buffers that the feed has made. */
    int buffersMade() {
        return pool.made();
    }

    @Override
    public void close() {
        closed = true;
        newest++;
        LockSupport.unpark(thread);
    }

    /** Waits until the decoder thread has let go of the film; for tests and for shutting down. */
    void awaitClosed() throws InterruptedException {
        thread.join();
    }

    private int clamp(int frame) {
        return Math.max(0, Math.min(source.frameCount() - 1, frame));
    }

    // From here on: the decoder thread.

    private void run() {
        try (FrameSource.Reader reader = source.open(() -> closed)) {
            Command done = NOTHING_YET;
            Passes kept = passes;
            while (!closed) {
                if (!kept.equals(passes)) {
                    kept = passes;
                    reader.passes(kept.pass(), kept.next());
                }
                Command command = slot;
                if (command.ticket() == done.ticket()) {
                    Command before = done;
                    if (!reader.ahead(() -> superseded(before)) && !superseded(before)) {
                        LockSupport.park(this);
                    }
                    continue;
                }
                done = command;
                if (command.walk() == null) {
                    stand(reader, command);
                } else {
                    walk(reader, command, command.walk());
                }
            }
        } catch (ClipException e) {
            failForGood(e.getMessage());
        } catch (RuntimeException | LinkageError e) { // task boundary: a missing native library is an Error
            System.getLogger(FrameFeed.class.getName()).log(System.Logger.Level.ERROR, thread.getName(), e);
            failForGood("The recording can't be shown; the log says why.");
        } finally {
            cache.clear();
            for (Due due = queue.poll(); due != null; due = queue.poll()) {
                letGo(due.shown());
            }
        }
    }

    private void failForGood(@Nullable String sentence) {
        while (!closed) {
            Command command = slot;
            publish(command, System.nanoTime(), new Shown.Unreadable(command.frame(), String.valueOf(sentence)));
            while (!superseded(command)) {
                LockSupport.park(this);
            }
        }
    }

    private void stand(FrameSource.Reader reader, Command command) {
        Shown shown = fetch(reader, command.frame(), command);
        if (shown != null) {
            publish(command, System.nanoTime(), shown);
        }
    }

    private void walk(FrameSource.Reader reader, Command command, Walk walk) {
        WalkClock clock = new WalkClock(source::timeUs, walk, command.frame());
        while (!superseded(command)) {
            if (queued.get() >= chunk) {
                if (!reader.ahead(() -> superseded(command) || queued.get() < chunk)) {
                    LockSupport.parkNanos(this, PAUSE_NANOS);
                }
                continue;
            }
            dropped.addAndGet(clock.skipLate(System.nanoTime()));
            int frame = clock.frame();
            Shown shown = fetch(reader, frame, command);
            if (shown == null) {
                return;
            }
            publish(command, clock.dueNanos(System.nanoTime()), shown);
            if (!clock.advance()) {
                publish(command, clock.endNanos(), new Shown.Ended(frame));
                return;
            }
        }
    }

    /** A frame, or null where a newer command has called it off. */
    private @Nullable Shown fetch(FrameSource.Reader reader, int frame, Command command) {
        try {
            if (!cache.has(frame)) {
                if (command.backward() && !reader.readsAhead()) {
                    readTowards(reader, frame, command);
                } else {
                    read(reader, frame, () -> leftFor(command));
                }
            }
            Optional<Picture> picture = cache.get(frame);
            return picture.isPresent()
                    ? new Shown.Ready(picture.get().hold())
                    : new Shown.Unreadable(frame, "This frame was passed over.");
        } catch (ClipException e) {
            return e.reason() == ClipException.Reason.CANCELLED
                    ? null
                    : new Shown.Unreadable(frame, String.valueOf(e.getMessage()));
        }
    }

    /**
     * Whether a newer command leads somewhere else. One that asks for a frame nearby does not: each step of a held key
     * would call off the one before, and nothing would be shown before it is let go.
     */
    private boolean leftFor(Command command) {
        Command now = slot;
        return closed
                || (now.ticket() != command.ticket()
                        && (now.walk() != null || Math.abs(now.frame() - command.frame()) > chunk));
    }

    /**
     * Reads the frames before a frame on the way to it: the decoder passes them in any case, and the next steps back then
     * cost nothing.
     */
    private void readTowards(FrameSource.Reader reader, int frame, Command command) throws ClipException {
        int from = Math.max(0, frame - chunk + 1);
        if (command.walk() != null) {
            from = Math.max(from, Math.min(frame, command.walk().first()));
        }
        for (int n = from; n < frame; n++) {
            Command now = slot;
            if (closed || (now.ticket() != command.ticket() && (now.frame() < from || now.frame() > frame))) {
                break;
            }
            if (!cache.has(n)) {
                try {
                    read(reader, n, () -> false);
                } catch (ClipException e) {
                    // Only the frame asked for may say that it can't be read.
                }
            }
        }
        read(reader, frame, () -> false);
    }

    private void read(FrameSource.Reader reader, int frame, BooleanSupplier stop) throws ClipException {
        java.nio.ByteBuffer buffer = pool.take();
        try {
            reader.read(frame, buffer, stop);
        } catch (ClipException | RuntimeException e) {
            pool.giveBack(buffer);
            throw e;
        }
        cache.put(new Picture(frame, buffer, pool));
    }

    private boolean superseded(Command command) {
        return closed || slot.ticket() != command.ticket();
    }

    private void publish(Command command, long dueNanos, Shown shown) {
        queued.incrementAndGet();
        queue.add(new Due(command, dueNanos, shown));
    }

    private static void letGo(Shown shown) {
        if (shown instanceof Shown.Ready ready) {
            ready.picture().release();
        }
    }
}
