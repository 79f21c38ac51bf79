package levelback.player.work;

import java.time.LocalDate;
import java.util.Optional;
import levelback.store.book.Book;

/** Sets the day on which she is to be looked at again. */
public final class LookAgain {

    /** Four weeks: AHDB and University of Minnesota advice for the recheck; a block comes off then. Users may type any day. */
    public static final int USUAL_DAYS = 28;

    private final Book book;

    public LookAgain(Book book) {
        this.book = book;
    }

    /** The usual day: four weeks on. */
    public static LocalDate usualDay(LocalDate day) {
        return day.plusDays(USUAL_DAYS);
    }

    /**
     * Sets the day, or takes it off.
     *
     * @throws CardRefused if the day is not after the day of the card
     */
    public void on(Chute chute, Optional<LocalDate> day) {
        day.ifPresent(on -> {
            if (!on.isAfter(chute.day())) {
                throw new CardRefused(
                        "The day to look again, " + on + ", must come after the day of the card, " + chute.day() + ".");
            }
        });
        book.trim().putLookAgain(new OpenCard(book).open(chute).lift().id(), day);
    }
}
