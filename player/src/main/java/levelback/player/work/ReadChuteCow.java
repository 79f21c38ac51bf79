package levelback.player.work;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import levelback.store.book.Book;
import levelback.store.herd.Cow;
import levelback.store.herd.CowId;
import levelback.store.herd.HerdId;
import levelback.store.herd.Score;
import levelback.store.herd.Visit;
import levelback.store.herd.VisitId;
import levelback.store.trim.LiftCard;
import levelback.store.trim.MedicineNote;

/** Reads what the person at the chute must see of a cow. Writes nothing. */
public final class ReadChuteCow {

    private final Book book;

    public ReadChuteCow(Book book) {
        this.book = book;
    }

    /**
     * The cow that carries a number.
     *
     * @throws CardRefused if no cow of the herd carries it on that day
     */
    public CowId byNumber(HerdId herd, String number, LocalDate day) {
        return book.herd()
                .cowByNumber(herd, number.strip(), day)
                .map(Cow::id)
                .orElseThrow(() -> new CardRefused("No cow of this herd carries the number " + number.strip()
                        + "; look at her tag and type it again."));
    }

    /**
     * Everything about one cow on one day.
     *
     * @throws CardRefused if the cow is not in the book
     */
    public ChuteCow read(CowId id, LocalDate day) {
        Cow cow = book.herd()
                .cow(id, day)
                .orElseThrow(() -> new CardRefused("That cow is not in this book; look for her by number."));
        List<LiftCard> cards = book.trim().cardsOf(id);
        Optional<LiftCard> card =
                cards.stream().filter(c -> c.lift().date().equals(day)).findFirst();
        List<LiftCard> earlier =
                cards.stream().filter(c -> c.lift().date().isBefore(day)).toList();
        // The newest note that says anything of withholding stands until a newer one does: how long it holds is for the
        // label and the vet, so nothing here lets it lapse.
        Optional<ChuteCow.Withheld> withheld = cards.stream()
                .filter(c -> !c.lift().date().isAfter(day))
                .flatMap(c -> c.medicine().stream()
                        .filter(ReadChuteCow::saysWithheld)
                        .map(note -> new ChuteCow.Withheld(note, c.lift().date())))
                .findFirst();
        return new ChuteCow(
                cow,
                day,
                card,
                earlier,
                book.trim().blocksOn(cow.herd(), day).stream()
                        .filter(block -> block.cow().equals(id))
                        .toList(),
                scores(cow, day),
                withheld,
                book.nextUndo());
    }

    private static boolean saysWithheld(MedicineNote note) {
        return !note.milkWithheldUntil().isBlank() || !note.meatWithheldUntil().isBlank();
    }

    private List<ChuteCow.VisitScore> scores(Cow cow, LocalDate day) {
        Map<VisitId, Visit> visits =
                book.herd().visits(cow.herd()).stream().collect(Collectors.toMap(Visit::id, Function.identity()));
        List<Score> hers = book.herd().scoresOf(cow.id());
        Map<LocalDate, ChuteCow.VisitScore> byDate = new TreeMap<>();
        for (Score score : hers) {
            Visit visit = visits.get(score.visit());
            if (visit != null && !visit.date().isAfter(day)) {
                Score worst = ListChute.worstOf(hers, visit.id()).orElse(score);
                byDate.put(
                        visit.date(),
                        new ChuteCow.VisitScore(
                                visit.ordinal(), visit.date(), worst.scaleId(), worst.level(), worst.leg()));
            }
        }
        return List.copyOf(byDate.values());
    }
}
