package levelback.player.work;

import levelback.store.book.Book;
import levelback.store.herd.TagId;

/** Takes a tag off a pass; it stays in the history and undo brings it back. */
public final class TakeOffTag {

    private final Book book;

    public TakeOffTag(Book book) {
        this.book = book;
    }

    /** Takes it off. */
    public void takeOff(TagId tag) {
        book.herd().takeOff(tag);
    }
}
