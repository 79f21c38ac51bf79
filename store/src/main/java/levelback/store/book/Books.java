package levelback.store.book;

import java.nio.file.Path;
import java.time.Clock;
import levelback.store.book.internal.BookFile;
import levelback.store.book.internal.SqliteBook;
import levelback.store.schema.Schema;

/** Opens and makes books. Every method blocks on the disk. */
public final class Books {

    private Books() {}

    /**
     * Opens a book. One of an older schema is brought up to date first, after a copy of it was written beside it.
     *
     * @throws StoreException with one sentence if the file is not there, is not a book, was written by a newer Levelback,
     *     is damaged or may not be written; the file is then as it was
     */
    public static Book open(Path file) {
        BookFile book = at(file);
        book.bringUpToDate(book.requireBook());
        return opened(file);
    }

    /**
     * Makes an empty book, with its folder where that is not there, and opens it.
     *
     * @throws StoreException with one sentence if there is a file of that name or the folder may not be written
     */
    public static Book create(Path file) {
        at(file).make();
        return opened(file);
    }

    /** Opens a book, or makes it where there is none. */
    public static Book openOrCreate(Path file) {
        return at(file).isThere() ? open(file) : create(file);
    }

    private static BookFile at(Path file) {
        return new BookFile(file, Schema.ofThisBuild(), Clock.systemUTC());
    }

    private static Book opened(Path file) {
        return new SqliteBook(file.toAbsolutePath().normalize(), Clock.systemUTC());
    }
}
