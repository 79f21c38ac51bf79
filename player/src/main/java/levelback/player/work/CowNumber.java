package levelback.player.work;

import java.time.LocalDate;
import java.util.Optional;
import levelback.store.book.Book;
import levelback.store.book.StoreException;
import levelback.store.herd.Cow;
import levelback.store.herd.HerdId;

/** Finds the cow behind a number as typed; one that the herd does not have yet is listed. */
final class CowNumber {

    /** Longer than any management number; a whole ear-tag number still fits. */
    private static final int LONGEST = 20;

    private CowNumber() {}

    /**
     * @param typed a management number; zeros are kept, blanks around it are not
     * @throws StoreException with one sentence if it cannot be a number
     */
    static Cow findOrList(Book book, HerdId herd, String typed, LocalDate on) {
        String number = typed.strip();
        if (number.isEmpty() || number.length() > LONGEST || number.codePoints().anyMatch(Character::isISOControl)) {
            throw new StoreException(
                    "A cow number has 1 to " + LONGEST + " signs; type it as it stands on her collar.");
        }
        Optional<Cow> known = book.herd().cowByNumber(herd, number, on);
        if (known.isPresent()) {
            return known.get();
        }
        Cow cow = Cow.numbered(herd, number);
        book.herd().put(cow, on);
        return cow;
    }
}
