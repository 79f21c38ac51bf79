package levelback.player.work;

import levelback.store.book.Book;
import levelback.store.trim.Lift;
import levelback.store.trim.LiftCard;

/** Keeps that a control lift was not done. Her chance stays on the card: Proof counts her as refused. */
public final class RefuseLift {

    private final Book book;

    public RefuseLift(Book book) {
        this.book = book;
    }

    /**
     * Keeps the refusal; the card is closed with it.
     *
     * @throws CardRefused if she was not drawn as a control lift, or a foot of hers is on the card
     */
    public void refuse(Chute chute) {
        Card card = new Card(book, chute);
        LiftCard read = card.read()
                .filter(c -> c.lift().chance().isPresent())
                .orElseThrow(() -> new CardRefused(card.number()
                        + " was not drawn as a control lift; a cow that is simply not lifted needs no entry."));
        if (!read.feet().isEmpty()) {
            throw new CardRefused("A foot of " + card.number() + " is on the card, so she was lifted, not refused.");
        }
        Lift lift = read.lift();
        book.trim().put(new Lift(lift.id(), lift.cow(), lift.date(), lift.trimmer(), lift.chance(), true, true));
    }
}
