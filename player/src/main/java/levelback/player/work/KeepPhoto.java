package levelback.player.work;

import java.nio.file.Files;
import java.nio.file.Path;
import levelback.scoring.value.Leg;
import levelback.store.book.Book;

/** Keeps where a photo of a foot lies; the file itself is left where it is. */
public final class KeepPhoto {

    private final Book book;

    public KeepPhoto(Book book) {
        this.book = book;
    }

    /**
     * Keeps the path with the foot.
     *
     * @throws CardRefused if there is no such file
     */
    public void keep(Chute chute, Leg leg, Path file) {
        if (!Files.isRegularFile(file)) {
            throw new CardRefused("There is no photo at " + file + "; choose the file again.");
        }
        book.trim().putPhoto(new Card(book, chute).liftedFoot(leg).foot().id(), file.toAbsolutePath());
    }
}
