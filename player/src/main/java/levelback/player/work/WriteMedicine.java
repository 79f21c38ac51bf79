package levelback.player.work;

import levelback.store.book.Book;
import levelback.store.trim.MedicineNote;

/**
 * Keeps the medicine note exactly as typed from the label or as the vet said. Nothing is looked up, computed, trimmed or
 * checked: Levelback knows no product and no withholding time.
 */
public final class WriteMedicine {

    private final Book book;

    public WriteMedicine(Book book) {
        this.book = book;
    }

    /** Keeps the note on the card. */
    public void write(Chute chute, MedicineNote note) {
        book.trim().putMedicine(new OpenCard(book).open(chute).lift().id(), note);
    }
}
