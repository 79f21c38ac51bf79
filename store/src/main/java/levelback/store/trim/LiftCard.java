package levelback.store.trim;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** One cow's card of one day. */
public record LiftCard(
        Lift lift, List<FootCard> feet, Optional<MedicineNote> medicine, Optional<LocalDate> lookAgainOn) {
    public LiftCard {
        feet = List.copyOf(feet);
    }
}
