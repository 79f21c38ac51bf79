package levelback.store.trim;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import levelback.scoring.foot.FootAction;
import levelback.store.herd.CowId;
import levelback.store.herd.HerdId;

/** What was found and done at the chute. Blocking; see {@link levelback.store.book.Book}. */
public interface TrimShelf {

    /** Opens or corrects a cow's card of a day. */
    void put(Lift lift);

    /** Adds or corrects a foot. */
    void put(Foot foot);

    /** Adds or corrects a finding. */
    void put(Finding finding);

    /** Takes a finding off the card; it stays in the history. */
    void takeOff(FindingId finding);

    /** Sets what was done to a foot; a block put on or taken off is kept with its day. */
    void putActions(FootId foot, Set<FootAction> actions);

    void putMedicine(LiftId lift, MedicineNote note);

    void putLookAgain(LiftId lift, Optional<LocalDate> on);

    /** Keeps where a photo lies. */
    void putPhoto(FootId foot, java.nio.file.Path file);

    /** Where the photos of a foot lie. */
    List<java.nio.file.Path> photosOf(FootId foot);

    /** The cards of a cow, newest first. */
    List<LiftCard> cardsOf(CowId cow);

    /** The cards of a herd from a day to a day, both in, oldest first. */
    List<LiftCard> cardsOf(HerdId herd, LocalDate from, LocalDate to);

    /** Blocks that are on, of a herd. */
    List<Block> blocksOn(HerdId herd, LocalDate day);
}
