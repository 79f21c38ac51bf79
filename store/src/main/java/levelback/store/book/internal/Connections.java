package levelback.store.book.internal;

import java.nio.file.Path;
import java.time.Clock;
import java.util.Optional;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.BiFunction;
import java.util.function.Function;
import levelback.store.book.StoreException;
import org.jdbi.v3.core.ConnectionFactory;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.sqlite.SQLiteConfig;

/**
 * One thread that writes and a few connections that read. Safe from any thread; a call returns when its work is on the
 * disk.
 */
final class Connections implements AutoCloseable {

    static final int BUSY_MILLIS = 5000;

    private static final int READERS = 3;
    private static final int CACHE_KIB = 48 * 1024;

    private final Path file;
    private final Journal journal;
    private final Pen pen;
    private final ExecutorService writer;
    private final AtomicReference<Thread> writerThread = new AtomicReference<>();
    private final ConcurrentLinkedQueue<Handle> idleReaders = new ConcurrentLinkedQueue<>();
    private final Semaphore readers = new Semaphore(READERS, true);
    private volatile boolean closed;

    Connections(Path file, Clock clock) {
        this.file = file;
        this.journal = new Journal(clock);
        this.pen = new Pen(open(file));
        this.writer = Executors.newSingleThreadExecutor(work -> {
            Thread thread = new Thread(work, "levelback-store-writer");
            thread.setDaemon(true);
            writerThread.set(thread);
            return thread;
        });
        try {
            journal.attach(pen);
        } catch (RuntimeException e) {
            pen.close();
            writer.shutdown();
            throw SqlSentences.of(e, file);
        }
    }

    /** A connection with every setting of the book. */
    static Handle open(Path file) {
        SQLiteConfig config = plain();
        config.setJournalMode(SQLiteConfig.JournalMode.WAL);
        config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
        config.enforceForeignKeys(true);
        // Nobody asks for them, and the driver would ask the database after every insert.
        config.setGetGeneratedKeys(false);
        // Kibibytes where negative. Two megabytes, the default, make an import of years of scores read its own pages
        // again.
        config.setCacheSize(-CACHE_KIB);
        config.setTransactionMode(SQLiteConfig.TransactionMode.IMMEDIATE);
        return open(file, config);
    }

    /** Settings of a first look that must not change the file. */
    static SQLiteConfig plain() {
        SQLiteConfig config = new SQLiteConfig();
        config.setBusyTimeout(BUSY_MILLIS);
        return config;
    }

    static Handle open(Path file, SQLiteConfig config) {
        // As a URI, so that a question mark or a percent sign in the name stays a letter of the name.
        String url = "jdbc:sqlite:file://" + file.toAbsolutePath().toUri().getRawPath();
        try {
            return Jdbi.create((ConnectionFactory) () -> config.createConnection(url))
                    .open();
        } catch (RuntimeException e) {
            throw SqlSentences.of(e, file);
        }
    }

    Journal journal() {
        return journal;
    }

    /** Asks a question of one state of the book; inside a step it sees the step's own writes. */
    <T> T read(Function<Handle, T> question) {
        if (Thread.currentThread() == writerThread.get()) {
            return asked(() -> question.apply(pen.handle()));
        }
        readers.acquireUninterruptibly();
        try {
            requireOpen();
            return asked(() -> {
                Handle idle = idleReaders.poll();
                Handle handle = idle != null ? idle : reader();
                boolean whole = false;
                try {
                    handle.execute("BEGIN");
                    T answer = question.apply(handle);
                    handle.execute("COMMIT");
                    whole = true;
                    return answer;
                } finally {
                    if (whole) {
                        idleReaders.add(handle);
                    } else {
                        handle.close();
                    }
                }
            });
        } finally {
            readers.release();
        }
    }

    /** Writes: a step of its own, or part of the step that is running on this thread. */
    <T> T write(String who, String what, Function<Pen, T> work) {
        if (Thread.currentThread() == writerThread.get()) {
            return asked(() -> work.apply(pen));
        }
        return onWriter(() -> inTransaction(() -> {
            long step = journal.open(pen, who, what);
            T answer = work.apply(pen);
            return new Outcome<>(answer, journal.end(pen, step));
        }));
    }

    /** Plays a step back or forth: {@code which} finds it, {@code play} does it. Returns its words. */
    Optional<String> play(
            Function<Handle, Optional<Journal.Entry>> which, BiFunction<Pen, Journal.Entry, String> play) {
        if (Thread.currentThread() == writerThread.get()) {
            throw new IllegalStateException("undo and redo cannot be part of a step");
        }
        return onWriter(() -> inTransaction(() -> {
            Optional<String> words = which.apply(pen.handle()).map(entry -> play.apply(pen, entry));
            return new Outcome<>(words, words.isPresent());
        }));
    }

    /** What a transaction gave and whether there is anything to keep. */
    private record Outcome<T>(T answer, boolean keep) {}

    private <T> T inTransaction(java.util.function.Supplier<Outcome<T>> work) {
        pen.begin();
        boolean ended = false;
        try {
            Outcome<T> outcome = work.get();
            if (outcome.keep()) {
                pen.commit();
                ended = true;
            }
            return outcome.answer();
        } finally {
            if (!ended) {
                pen.rollback();
            }
        }
    }

    private <T> T onWriter(java.util.function.Supplier<T> work) {
        requireOpen();
        Future<T> future;
        try {
            future = writer.submit(() -> asked(work));
        } catch (RejectedExecutionException e) {
            throw new StoreException("The book " + file.getFileName() + " is closed.", e);
        }
        boolean interrupted = false;
        try {
            while (true) {
                try {
                    return future.get();
                } catch (InterruptedException e) {
                    // What was handed to the writer will be written; the caller must not believe otherwise.
                    interrupted = true;
                } catch (ExecutionException e) {
                    if (e.getCause() instanceof RuntimeException failure) {
                        throw failure;
                    }
                    if (e.getCause() instanceof Error error) {
                        throw error;
                    }
                    throw new IllegalStateException(e.getCause());
                }
            }
        } finally {
            if (interrupted) {
                Thread.currentThread().interrupt();
            }
        }
    }

    private <T> T asked(java.util.function.Supplier<T> work) {
        try {
            return work.get();
        } catch (RuntimeException e) {
            throw SqlSentences.of(e, file);
        }
    }

    private Handle reader() {
        Handle handle = open(file);
        handle.execute("PRAGMA query_only = ON");
        return handle;
    }

    private void requireOpen() {
        if (closed) {
            throw new StoreException("The book " + file.getFileName() + " is closed.");
        }
    }

    @Override
    public void close() {
        if (closed) {
            return;
        }
        closed = true;
        writer.shutdown();
        boolean interrupted = false;
        try {
            while (!writer.awaitTermination(1, TimeUnit.MINUTES)) {
                // A step that has begun is always finished.
            }
        } catch (InterruptedException e) {
            interrupted = true;
        }
        readers.acquireUninterruptibly(READERS);
        readers.release(READERS);
        for (Handle handle = idleReaders.poll(); handle != null; handle = idleReaders.poll()) {
            handle.close();
        }
        pen.close();
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
    }
}
