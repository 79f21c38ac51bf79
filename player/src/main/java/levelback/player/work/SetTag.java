package levelback.player.work;

import java.time.Instant;
import java.util.Optional;
import levelback.scoring.foot.FootSign;
import levelback.scoring.scale.Sign;
import levelback.scoring.value.Leg;
import levelback.scoring.value.MediaTime;
import levelback.store.book.Book;
import levelback.store.book.StoreException;
import levelback.store.herd.PersonId;
import levelback.store.herd.Tag;
import levelback.store.herd.TagId;
import levelback.store.lane.PassId;

/** Sets a sign or a foot finding at its moment. Saying the same again at the same frame changes nothing. */
public final class SetTag {

    private final Book book;

    public SetTag(Book book) {
        this.book = book;
    }

    /**
     * The moment of a pass at which something is said.
     *
     * @param recordingFrame frame numbered in the recording
     * @param time the stream's own time stamp of that frame
     * @param at when it was entered
     */
    public record Moment(PassId pass, PersonId by, int recordingFrame, MediaTime time, Instant at) {}

    /**
     * Sets a sign.
     *
     * @param leg the leg, for a sign that belongs to one; ignored for one that does not
     * @throws StoreException with one sentence if the sign needs a leg and none is named
     */
    public Tag sign(Moment moment, Sign sign, Optional<Leg> leg) {
        if (sign.isOfALeg() && leg.isEmpty()) {
            throw new StoreException("This sign belongs to a leg; choose the leg first.");
        }
        return set(moment, Tag.Kind.SIGN, sign.key(), sign.isOfALeg() ? leg : Optional.empty(), "");
    }

    /**
     * Sets a foot finding.
     *
     * @param note free words; empty text for none
     */
    public Tag footFinding(Moment moment, FootSign finding, Leg leg, String note) {
        return set(moment, Tag.Kind.FOOT_FINDING, finding.key(), Optional.of(leg), note);
    }

    private Tag set(Moment moment, Tag.Kind kind, String key, Optional<Leg> leg, String note) {
        for (Tag before : book.herd().tagsOf(moment.pass())) {
            if (before.kind() == kind
                    && before.key().equals(key)
                    && before.leg().equals(leg)
                    && before.by().equals(moment.by())
                    && before.recordingFrame() == moment.recordingFrame()
                    && before.note().equals(note)) {
                return before;
            }
        }
        Tag tag = new Tag(
                TagId.fresh(),
                moment.pass(),
                moment.by(),
                kind,
                key,
                leg,
                moment.recordingFrame(),
                moment.time(),
                note,
                moment.at());
        book.herd().put(tag);
        return tag;
    }
}
