package levelback.player.work;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import levelback.scoring.value.Leg;
import levelback.store.herd.Cow;
import levelback.store.trim.Block;
import levelback.store.trim.FootCard;
import levelback.store.trim.LiftCard;
import levelback.store.trim.MedicineNote;

/**
 * All that the person at the chute must see of a cow.
 *
 * @param card her card of the day, once anything is written on it
 * @param earlier her cards of earlier days, newest first
 * @param blocks blocks that are on her feet
 * @param scores her visits with a score, oldest first, up to the day
 * @param withheld the newest medicine note that says something about withholding, as typed
 * @param nextUndo what undo would take back, in words
 */
public record ChuteCow(
        Cow cow,
        LocalDate day,
        Optional<LiftCard> card,
        List<LiftCard> earlier,
        List<Block> blocks,
        List<VisitScore> scores,
        Optional<Withheld> withheld,
        Optional<String> nextUndo) {

    public ChuteCow {
        earlier = List.copyOf(earlier);
        blocks = List.copyOf(blocks);
        scores = List.copyOf(scores);
    }

    /**
     * Her highest score of a visit.
     *
     * @param visitOrdinal number of the visit in the herd, 1 for the first
     */
    public record VisitScore(int visitOrdinal, LocalDate date, String scaleId, double level, Optional<Leg> leg) {}

    /** A medicine note about withholding and the day of the card it stands on. */
    public record Withheld(MedicineNote note, LocalDate typedOn) {}

    /** The foot on the card of the day; empty means <em>not lifted</em>. */
    public Optional<FootCard> foot(Leg leg) {
        return card.flatMap(c -> footOf(c, leg));
    }

    /** A foot on some card. */
    public static Optional<FootCard> footOf(LiftCard card, Leg leg) {
        return card.feet().stream().filter(foot -> foot.foot().leg() == leg).findFirst();
    }
}
