package levelback.store.book;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import levelback.store.herd.CowId;
import levelback.store.herd.HerdShelf;
import levelback.store.lane.LaneShelf;
import levelback.store.trim.TrimShelf;

/**
 * An open book. Every method of it and of its shelves may block on the disk: never call one on the JavaFX thread. All
 * writes go through one writer thread and are on the disk (WAL, {@code synchronous=FULL}) when the call returns.
 */
public interface Book extends AutoCloseable {

    /** Where the book lies. */
    Path file();

    /** Herds, cows, people, visits, scores and tags. */
    HerdShelf herd();

    /** Recordings, passes and gate reads. */
    LaneShelf lane();

    /** What was found and done at the chute. */
    TrimShelf trim();

    /**
     * Runs several writes as one: all or nothing, and one step for undo.
     *
     * @param who the person at the desk, for the history
     * @param what the step in words, such as {@code Tagged head bob, cow 412, frame 153}
     */
    <T> T step(String who, String what, java.util.function.Function<Book, T> writes);

    /** What undo would take back, in words. */
    Optional<String> nextUndo();

    /** What redo would bring back, in words. */
    Optional<String> nextRedo();

    /** Takes back the newest step that still stands, by adding a change; returns its words. */
    Optional<String> undo(String who);

    /** Brings back the step undone last; returns its words. */
    Optional<String> redo(String who);

    /** A number that grows with every committed step; pages reload when it moved. */
    long revision();

    /**
     * What was changed, newest first.
     *
     * @param cow only what concerns this cow; empty for everything
     * @param atMost how many to return
     */
    List<Change> changes(Optional<CowId> cow, int atMost);

    /** Looks the whole book through: the file itself, what refers to what, and the rules on scores. */
    BookCheck check();

    @Override
    void close();
}
