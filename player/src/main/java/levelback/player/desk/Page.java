package levelback.player.desk;

import javafx.scene.Node;
import javafx.scene.input.KeyEvent;

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

    /** Lets go of everything: decoders, timers. */
    void close();
}
