package levelback.player.desk;

import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import java.util.function.Function;
import levelback.store.book.Book;
import levelback.store.herd.CowId;
import levelback.store.herd.Herd;
import levelback.store.herd.Person;
import levelback.store.herd.Visit;
import levelback.store.lane.PassId;

/** What the desk lends its pages. Everything here is called on the JavaFX thread unless it says otherwise. */
public interface Desk {

    /** Herd on show; empty in an empty book. */
    Optional<Herd> herd();

    /** Visit on show. */
    Optional<Visit> visit();

    /** The scorer signed on. */
    Person scorer();

    /** Runs work on one background thread after another and nothing on the JavaFX thread. */
    Executor background();

    /** Runs on the JavaFX thread. */
    Executor ui();

    /**
     * Reads from the book in the background and hands the answer back on the JavaFX thread. A failure goes to
     * {@link #error(String)} and {@code then} is not called.
     */
    <T> void read(Function<Book, T> question, Consumer<T> then);

    /**
     * Writes one step to the book in the background (one undo step), then hands the answer back on the JavaFX thread and
     * tells all pages that the book changed.
     *
     * @param what the step in words, as the sill shows it
     */
    <T> void step(String what, Function<Book, T> writes, Consumer<T> then);

    /** Shows a message in the sill for six seconds. */
    void message(String text);

    /** Shows an error in the sill until closed: one sentence. */
    void error(String sentence);

    /** Shows a long job in the sill; close it when done. */
    Job job(String name, Runnable stop);

    /** Goes to a page. */
    void go(PageId page);

    /** Opens a pass on Score at a frame numbered in the recording. */
    void openPass(PassId pass, int recordingFrame);

    /** Opens a cow on Trim. */
    void openCowOnTrim(CowId cow);

    /** Sets the second line of a gate in the race, and how much of its work is done. */
    void gateLine(PageId page, String line, double fractionDone);

    /** Asks for video files and hands them to the page that brings recordings in (Ctrl O). */
    void chooseRecordings();

    /** Goes into or out of chute mode on Trim (F9). */
    void chuteMode(boolean on);

    /** Puts another visit on show, such as the one a recording came in with; pages are then {@link Page#shown()} anew. */
    void show(Visit visit);

    /** Takes back the newest step that stands, as the sill's key does. */
    default void undo() {}

    /** Size of the screen as a person measured it, px in one mm; empty until measured. */
    default java.util.OptionalDouble screenPxPerMm() {
        return java.util.OptionalDouble.empty();
    }

    /** Keeps the measured size of the screen in the settings. */
    default void keepScreenPxPerMm(double pxPerMm) {}

    /** Whether the dark theme is on. */
    boolean dark();

    /** A long job as the sill shows it. Thread-safe. */
    interface Job extends AutoCloseable {
        /** Work done so far, in [0, 1]. */
        void progress(double fractionDone);

        @Override
        void close();
    }
}
