package levelback.player.desk;

import java.nio.file.Path;
import java.util.List;
import javafx.scene.Node;
import javafx.scene.input.KeyEvent;
import levelback.store.herd.CowId;
import levelback.store.lane.PassId;

/** A page of the desk. Every method is called on the JavaFX thread and returns at once. */
public interface Page {

    /** Which page it is. */
    PageId id();

    /** What fills the space between race and sill; built once, on first use. */
    Node view();

    /** Called each time the page comes to the front, and when the book, herd, visit or scorer changed. */
    void shown();

    /** Called when the book has changed under the page (a step, an undo). */
    void bookChanged();

    /** Offers a key that no text field took; true if the page used it. */
    boolean key(KeyEvent event);

    /** Called after a change between light and dark; what a Canvas drew must be drawn again. */
    default void themeChanged() {
        shown();
    }

    /** Opens a pass at a frame numbered in the recording; the page that shows passes takes it. */
    default void openPass(PassId pass, int recordingFrame) {}

    /** Opens a cow; the page that shows one cow takes it. */
    default void openCow(CowId cow) {}

    /** Takes files dropped on the desk or chosen with Ctrl O; the page that brings recordings in takes them. */
    default void takeFiles(List<Path> files) {}

    /**
     * Goes into or out of chute mode (F9).
     *
     * @return whether the page is in chute mode now; then the desk hides race and sill
     */
    default boolean chuteMode(boolean on) {
        return false;
    }

    /** Lets go of everything: decoders, timers. */
    void close();
}
