package levelback.player.work;

import java.util.Optional;
import java.util.OptionalInt;
import levelback.scoring.foot.Claw;
import levelback.scoring.foot.Lesion;
import levelback.scoring.value.Leg;
import levelback.store.book.Book;
import levelback.store.trim.Finding;
import levelback.store.trim.FindingId;
import levelback.store.trim.Foot;

/** Writes a finding on a foot. The foot counts as lifted from then on, and no longer as one with nothing found. */
public final class WriteFinding {

    private final Book book;

    public WriteFinding(Book book) {
        this.book = book;
    }

    /**
     * Writes a finding.
     *
     * @return the line as it stands on the card
     * @throws CardRefused if the code is unknown, or zone, severity or stage do not go with it
     */
    public Finding write(Chute chute, Leg leg, FindingDraft draft) {
        return write(chute, leg, FindingId.fresh(), draft);
    }

    /** Writes a finding under an identity chosen before, so that the next touch can correct it at once. */
    public Finding write(Chute chute, Leg leg, FindingId id, FindingDraft draft) {
        Lesion lesion = FindingRules.lesion(draft.lesion());
        FindingRules.check(lesion, draft);
        Foot foot = new Card(book, chute).liftedFoot(leg).foot();
        if (foot.noLesion()) {
            book.trim().put(new Foot(foot.id(), foot.lift(), leg, false));
        }
        OptionalInt zone = draft.zone().isPresent() ? draft.zone() : FindingRules.usualZone(lesion);
        Claw claw = FindingRules.claw(leg, zone, draft.claw());
        Finding finding = new Finding(
                id,
                foot.id(),
                claw,
                zone,
                draft.zone().isPresent(),
                lesion.code(),
                draft.severity(),
                draft.stage(),
                draft.note());
        book.trim().put(finding);
        return finding;
    }

    /** The claw that carries most of the load and most of the lesions: outer behind, inner in front. */
    public static Claw usualClaw(Leg leg) {
        return FindingRules.claw(leg, OptionalInt.empty(), Optional.empty());
    }
}
