package levelback.player.work;

import java.util.Optional;
import java.util.OptionalInt;
import levelback.scoring.foot.Claw;
import levelback.scoring.foot.Lesion;
import levelback.scoring.value.Leg;
import levelback.store.book.Book;
import levelback.store.trim.Finding;
import levelback.store.trim.FindingId;

/** Corrects a line of the card or takes it off; what stood there before stays in the history. */
public final class ChangeFinding {

    private final Book book;

    public ChangeFinding(Book book) {
        this.book = book;
    }

    /** Sets or confirms the place of a finding. */
    public Finding place(Chute chute, FindingId id, Claw claw, int zone) {
        FindingRules.checkZone(zone);
        Card.Line line = new Card(book, chute).line(id);
        Finding was = line.finding();
        Leg leg = line.foot().foot().leg();
        return put(new Finding(
                id,
                was.foot(),
                FindingRules.claw(leg, OptionalInt.of(zone), Optional.of(claw)),
                OptionalInt.of(zone),
                true,
                was.lesion(),
                was.severity(),
                was.stage(),
                was.note()));
    }

    /** Sets how bad it is: 1 mild, 2 moderate, 3 severe. */
    public Finding severity(Chute chute, FindingId id, int level) {
        Finding was = new Card(book, chute).line(id).finding();
        return changed(was, was.lesion(), OptionalInt.of(level), "", was.note());
    }

    /** Sets the stage of digital dermatitis. */
    public Finding stage(Chute chute, FindingId id, String stage) {
        Finding was = new Card(book, chute).line(id).finding();
        return changed(was, was.lesion(), OptionalInt.empty(), stage, was.note());
    }

    /** Sets the words beside the line. */
    public Finding note(Chute chute, FindingId id, String note) {
        Finding was = new Card(book, chute).line(id).finding();
        return changed(was, was.lesion(), was.severity(), was.stage(), note);
    }

    /**
     * Sets another code. Severity stays where the new code takes one; a zone that was only the old code's usual one gives
     * way to the new code's.
     */
    public Finding lesion(Chute chute, FindingId id, String code) {
        Card.Line line = new Card(book, chute).line(id);
        Finding was = line.finding();
        Lesion lesion = FindingRules.lesion(code);
        OptionalInt severity = lesion.staged() ? OptionalInt.empty() : was.severity();
        String stage = lesion.staged() ? was.stage() : "";
        OptionalInt zone = was.zoneConfirmed() ? was.zone() : FindingRules.usualZone(lesion);
        Claw claw = was.zoneConfirmed()
                ? was.claw()
                : FindingRules.claw(
                        line.foot().foot().leg(), zone, Optional.of(was.claw()).filter(c -> c != Claw.INTERDIGITAL));
        return put(new Finding(
                id, was.foot(), claw, zone, was.zoneConfirmed(), lesion.code(), severity, stage, was.note()));
    }

    /** Takes a line off the card. The foot stays lifted; whether nothing was found is for the trimmer to say. */
    public void takeOff(Chute chute, FindingId id) {
        new Card(book, chute).line(id);
        book.trim().takeOff(id);
    }

    private Finding changed(Finding was, String code, OptionalInt severity, String stage, String note) {
        FindingRules.check(
                FindingRules.lesion(code),
                new FindingDraft(Optional.of(was.claw()), was.zone(), code, severity, stage, note));
        return put(new Finding(
                was.id(), was.foot(), was.claw(), was.zone(), was.zoneConfirmed(), code, severity, stage, note));
    }

    private Finding put(Finding finding) {
        book.trim().put(finding);
        return finding;
    }
}
