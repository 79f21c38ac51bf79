package levelback.player.work;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import levelback.scoring.value.Leg;
import levelback.store.book.Book;
import levelback.store.trim.Finding;
import levelback.store.trim.FindingId;
import levelback.store.trim.Foot;
import levelback.store.trim.FootCard;
import levelback.store.trim.FootId;
import levelback.store.trim.LiftCard;

/** Reads the card that a step is about to write on. */
final class Card {

    private final Book book;
    private final Chute chute;

    Card(Book book, Chute chute) {
        this.book = book;
        this.chute = chute;
    }

    /** The card of the day, if there is one. */
    Optional<LiftCard> read() {
        return book.trim().cardsOf(chute.cow()).stream()
                .filter(card -> card.lift().date().equals(chute.day()))
                .findFirst();
    }

    Optional<FootCard> foot(Leg leg) {
        return read().flatMap(card ->
                card.feet().stream().filter(foot -> foot.foot().leg() == leg).findFirst());
    }

    /** The foot on the card; it is put there, as lifted, if it was not. */
    FootCard liftedFoot(Leg leg) {
        LiftCard card = new OpenCard(book).openForAFoot(chute);
        return card.feet().stream()
                .filter(foot -> foot.foot().leg() == leg)
                .findFirst()
                .orElseGet(() -> {
                    Foot foot = new Foot(FootId.fresh(), card.lift().id(), leg, false);
                    book.trim().put(foot);
                    return new FootCard(foot, List.of(), Set.of());
                });
    }

    /** A line of the card, with its foot. */
    Line line(FindingId id) {
        return read().stream()
                .flatMap(card -> card.feet().stream())
                .flatMap(foot -> foot.findings().stream().map(finding -> new Line(foot, finding)))
                .filter(line -> line.finding().id().equals(id))
                .findFirst()
                .orElseThrow(() -> new CardRefused("That line is no longer on the card; look at the card again."));
    }

    record Line(FootCard foot, Finding finding) {}

    /** Her number on the day, for sentences. */
    String number() {
        return book.herd()
                .cow(chute.cow(), chute.day())
                .map(levelback.store.herd.Cow::number)
                .orElse("She");
    }
}
