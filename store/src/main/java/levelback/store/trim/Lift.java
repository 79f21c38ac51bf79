package levelback.store.trim;

import java.time.LocalDate;
import java.util.OptionalDouble;
import levelback.store.herd.CowId;
import levelback.store.herd.PersonId;

/**
 * One cow in the chute on one day.
 *
 * @param chance known chance with which she was drawn if she came as a control lift
 * @param refused a control lift that was not done; it has no feet
 * @param done whether the trimmer has closed the card
 */
public record Lift(
        LiftId id, CowId cow, LocalDate date, PersonId trimmer, OptionalDouble chance, boolean refused, boolean done) {}
