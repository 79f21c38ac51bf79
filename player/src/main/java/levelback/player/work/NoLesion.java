package levelback.player.work;

import levelback.scoring.value.Leg;
import levelback.store.book.Book;
import levelback.store.trim.Foot;
import levelback.store.trim.FootCard;

/** Says that a foot was lifted, looked at, and nothing found: never taken for granted, because an unlifted foot is not a clean one. */
public final class NoLesion {

    private final Book book;

    public NoLesion(Book book) {
        this.book = book;
    }

    /**
     * Says that nothing was found.
     *
     * @throws CardRefused if findings stand on that foot
     */
    public void say(Chute chute, Leg leg) {
        FootCard foot = new Card(book, chute).liftedFoot(leg);
        if (!foot.findings().isEmpty()) {
            throw new CardRefused(leg + " has " + count(foot.findings().size())
                    + " on the card; take " + (foot.findings().size() == 1 ? "it" : "them")
                    + " off before saying that nothing was found.");
        }
        put(foot.foot(), true);
    }

    /** Takes it back: the foot stays lifted, and what was found is open again. */
    public void takeBack(Chute chute, Leg leg) {
        new Card(book, chute).foot(leg).ifPresent(foot -> put(foot.foot(), false));
    }

    private void put(Foot foot, boolean noLesion) {
        if (foot.noLesion() != noLesion) {
            book.trim().put(new Foot(foot.id(), foot.lift(), foot.leg(), noLesion));
        }
    }

    private static String count(int findings) {
        return findings == 1 ? "a finding" : findings + " findings";
    }
}
