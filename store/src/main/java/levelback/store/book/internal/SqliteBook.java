package levelback.store.book.internal;

import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import levelback.store.book.Book;
import levelback.store.book.BookCheck;
import levelback.store.book.Change;
import levelback.store.herd.CowId;
import levelback.store.herd.HerdShelf;
import levelback.store.lane.LaneShelf;
import levelback.store.trim.TrimShelf;
import org.jdbi.v3.core.Handle;

/** A book in one SQLite file. */
public final class SqliteBook implements Book {

    private final Path file;
    private final Connections connections;
    private final HerdShelf herd;
    private final LaneShelf lane;
    private final TrimShelf trim;

    /** Opens a file that {@link BookFile} has looked at and brought up to date. */
    public SqliteBook(Path file, Clock clock) {
        this.file = file;
        this.connections = new Connections(file, clock);
        this.herd = new SqliteHerdShelf(connections);
        this.lane = new SqliteLaneShelf(connections);
        this.trim = new SqliteTrimShelf(connections);
    }

    @Override
    public Path file() {
        return file;
    }

    @Override
    public HerdShelf herd() {
        return herd;
    }

    @Override
    public LaneShelf lane() {
        return lane;
    }

    @Override
    public TrimShelf trim() {
        return trim;
    }

    @Override
    public <T> T step(String who, String what, Function<Book, T> writes) {
        return connections.write(who, what, pen -> writes.apply(this));
    }

    @Override
    public Optional<String> nextUndo() {
        return connections.read(h -> connections.journal().nextUndo(h)).map(Journal.Entry::what);
    }

    @Override
    public Optional<String> nextRedo() {
        return connections.read(h -> connections.journal().nextRedo(h)).map(Journal.Entry::what);
    }

    @Override
    public Optional<String> undo(String who) {
        Journal journal = connections.journal();
        return connections.play(journal::nextUndo, (pen, step) -> {
            journal.undo(pen, step, who);
            return step.what();
        });
    }

    @Override
    public Optional<String> redo(String who) {
        Journal journal = connections.journal();
        return connections.play(journal::nextRedo, (pen, step) -> {
            journal.redo(pen, step, who);
            return step.what();
        });
    }

    @Override
    public long revision() {
        return connections.read(h -> h.createQuery("SELECT ifnull(max(n), 0) FROM step")
                .mapTo(Long.class)
                .one());
    }

    @Override
    public List<Change> changes(Optional<CowId> cow, int atMost) {
        return connections.read(h -> History.changes(h, cow, atMost));
    }

    @Override
    public BookCheck check() {
        return connections.read(Checkup::of);
    }

    /** Settings of a reading and of the writing connection, for tests: each as {@code name=value}. */
    List<String> settings() {
        List<String> both = new ArrayList<>(connections.read(SqliteBook::settings));
        both.addAll(connections.write("", "", pen -> settings(pen.handle())));
        return both;
    }

    private static List<String> settings(Handle h) {
        return List.of("journal_mode", "synchronous", "foreign_keys", "busy_timeout").stream()
                .map(name -> name + "="
                        + h.createQuery("PRAGMA " + name).mapTo(String.class).one())
                .toList();
    }

    /** Sets how many pages the file may take, for a test of a full disk. */
    void limitPages(long pages) {
        connections.write("", "", pen -> pen.number("PRAGMA max_page_count = " + pages));
    }

    /** Pages that the file takes. */
    long pages() {
        return connections.read(
                h -> h.createQuery("PRAGMA page_count").mapTo(Long.class).one());
    }

    @Override
    public void close() {
        connections.close();
    }
}
