package levelback.player.work;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import levelback.store.book.Book;
import levelback.store.trim.Lift;
import levelback.store.trim.LiftCard;
import levelback.store.trim.LiftId;

/** Opens a cow's card of a day, or hands back the one that is there: a cow has one card a day. */
public final class OpenCard {

    private final Book book;

    public OpenCard(Book book) {
        this.book = book;
    }

    /** Opens the card of a cow that was brought in for cause. */
    public LiftCard open(Chute chute) {
        return open(chute, OptionalDouble.empty());
    }

    /**
     * Opens the card.
     *
     * @param chance known chance with which she was drawn as a control lift, above 0 and at most 1; once on the card it
     *     stays, because Proof weighs by it
     * @throws CardRefused if the chance is out of range, or the card carries another one
     */
    public LiftCard open(Chute chute, OptionalDouble chance) {
        if (chance.isPresent() && !(chance.getAsDouble() > 0 && chance.getAsDouble() <= 1)) {
            throw new CardRefused(
                    "The chance of a control lift lies above 0 and at most at 1, not at " + chance.getAsDouble() + ".");
        }
        Optional<LiftCard> found = new Card(book, chute).read();
        if (found.isEmpty()) {
            Lift lift = new Lift(LiftId.fresh(), chute.cow(), chute.day(), chute.trimmer(), chance, false, false);
            book.trim().put(lift);
            return new LiftCard(lift, List.of(), Optional.empty(), Optional.empty());
        }
        LiftCard card = found.get();
        Lift lift = card.lift();
        if (chance.isPresent() && lift.chance().isPresent() && !chance.equals(lift.chance())) {
            throw new CardRefused("The card of " + new Card(book, chute).number()
                    + " already carries the chance "
                    + lift.chance().getAsDouble() + "; it cannot be " + chance.getAsDouble() + " as well.");
        }
        OptionalDouble kept = lift.chance().isPresent() ? lift.chance() : chance;
        if (kept.equals(lift.chance())) {
            return card;
        }
        Lift corrected =
                new Lift(lift.id(), lift.cow(), lift.date(), lift.trimmer(), kept, lift.refused(), lift.done());
        book.trim().put(corrected);
        return new LiftCard(corrected, card.feet(), card.medicine(), card.lookAgainOn());
    }

    /** Opens the card for something to be written on a foot: a refusal falls, because she was lifted after all. */
    LiftCard openForAFoot(Chute chute) {
        LiftCard card = open(chute);
        Lift lift = card.lift();
        if (!lift.refused()) {
            return card;
        }
        Lift lifted = new Lift(lift.id(), lift.cow(), lift.date(), lift.trimmer(), lift.chance(), false, false);
        book.trim().put(lifted);
        return new LiftCard(lifted, card.feet(), card.medicine(), card.lookAgainOn());
    }
}
