package levelback.player.work;

import java.util.Optional;
import levelback.store.book.Book;
import levelback.store.trim.LiftCard;

/**
 * Writes a whole card at once, by the same steps as the Trim page writes it line by line. Call it inside
 * {@link Book#step} to make it one step for undo.
 */
public final class WriteCard {

    private final Book book;

    public WriteCard(Book book) {
        this.book = book;
    }

    /**
     * Writes and closes the card.
     *
     * @return the card as it stands in the book
     * @throws CardRefused if the card contradicts itself
     */
    public LiftCard write(Chute chute, CardDraft draft) {
        new OpenCard(book).open(chute, draft.chance());
        if (draft.refused()) {
            if (!draft.feet().isEmpty()) {
                throw new CardRefused("A card cannot both be refused and carry feet; drop one of the two.");
            }
            new RefuseLift(book).refuse(chute);
            return read(chute);
        }
        for (CardDraft.FootDraft foot : draft.feet()) {
            new Card(book, chute).liftedFoot(foot.leg());
            for (FindingDraft finding : foot.findings()) {
                new WriteFinding(book).write(chute, foot.leg(), finding);
            }
            if (foot.noLesion()) {
                new NoLesion(book).say(chute, foot.leg());
            }
            if (!foot.actions().isEmpty()) {
                // What a finished card says about a block is what was done: it is kept, not asked about.
                new SetActions(book).set(chute, foot.leg(), foot.actions(), true);
            }
        }
        draft.medicine().ifPresent(note -> new WriteMedicine(book).write(chute, note));
        if (draft.lookAgainOn().isPresent()) {
            new LookAgain(book).on(chute, draft.lookAgainOn());
        }
        new CloseCard(book).close(chute);
        return read(chute);
    }

    private LiftCard read(Chute chute) {
        Optional<LiftCard> card = new Card(book, chute).read();
        return card.orElseThrow();
    }
}
