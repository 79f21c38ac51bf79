package levelback.player.work;

import java.util.List;
import levelback.scoring.value.Leg;
import levelback.store.book.Book;
import levelback.store.trim.Lift;
import levelback.store.trim.LiftCard;

/** Closes a card: the cow is done. */
public final class CloseCard {

    private final Book book;

    public CloseCard(Book book) {
        this.book = book;
    }

    /**
     * Closes the card. Feet that are not on it stay <em>not lifted</em>.
     *
     * @throws CardRefused if no foot is on the card
     */
    public void close(Chute chute) {
        Card card = new Card(book, chute);
        LiftCard read = card.read()
                .filter(c -> !c.feet().isEmpty())
                .orElseThrow(() -> new CardRefused("No foot of " + card.number()
                        + " is on the card; write a finding or No lesion on the foot that was lifted."));
        put(read.lift(), true);
    }

    /** Opens a closed card again. */
    public void reopen(Chute chute) {
        new Card(book, chute).read().ifPresent(card -> put(card.lift(), false));
    }

    /** Lifted feet of which neither a finding nor <em>no lesion</em> was said. */
    public static List<Leg> unsaid(LiftCard card) {
        return card.feet().stream()
                .filter(foot -> foot.findings().isEmpty() && !foot.foot().noLesion())
                .map(foot -> foot.foot().leg())
                .toList();
    }

    private void put(Lift lift, boolean done) {
        if (lift.done() != done) {
            book.trim()
                    .put(new Lift(
                            lift.id(), lift.cow(), lift.date(), lift.trimmer(), lift.chance(), lift.refused(), done));
        }
    }
}
