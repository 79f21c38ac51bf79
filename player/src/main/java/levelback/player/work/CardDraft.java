package levelback.player.work;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import levelback.scoring.foot.FootAction;
import levelback.scoring.value.Leg;
import levelback.store.trim.MedicineNote;

/**
 * A whole card, as a paper card, an import or the demo brings it.
 *
 * @param chance known chance with which she was drawn, if she came as a control lift
 * @param refused a control lift that was not done; then {@code feet} is empty
 * @param feet the feet that were lifted, and no other
 * @param medicine what was given, as typed
 * @param lookAgainOn the day to look again; empty takes the usual day where a block went on
 */
public record CardDraft(
        OptionalDouble chance,
        boolean refused,
        List<FootDraft> feet,
        Optional<MedicineNote> medicine,
        Optional<LocalDate> lookAgainOn) {

    public CardDraft {
        feet = List.copyOf(feet);
    }

    /**
     * One lifted foot.
     *
     * @param noLesion looked at and nothing found; then {@code findings} is empty
     */
    public record FootDraft(Leg leg, List<FindingDraft> findings, boolean noLesion, Set<FootAction> actions) {
        public FootDraft {
            findings = List.copyOf(findings);
            actions = Set.copyOf(actions);
        }
    }
}
