package levelback.player.work;

import java.time.Instant;
import java.util.Optional;
import levelback.scoring.value.MediaTime;
import levelback.store.book.Book;
import levelback.store.book.StoreException;
import levelback.store.herd.PersonId;
import levelback.store.herd.Tag;
import levelback.store.herd.TagId;
import levelback.store.lane.PassId;

/** Keeps that a scorer could not score a pass, and why, so that it is neither forgotten nor counted as sound. */
public final class CannotScore {

    /** The tag's key in files. */
    public static final String KEY = "cannot-score";

    private final Book book;

    public CannotScore(Book book) {
        this.book = book;
    }

    /**
     * @param reason in words, never blank
     * @throws StoreException with one sentence if no reason is given
     */
    public Tag cannot(PassId pass, PersonId scorer, String reason, int recordingFrame, MediaTime time, Instant at) {
        if (reason.isBlank()) {
            throw new StoreException("Say why this pass cannot be scored.");
        }
        for (Tag before : book.herd().tagsOf(pass)) {
            if (before.kind() == Tag.Kind.CANNOT_SCORE && before.by().equals(scorer)) {
                book.herd().takeOff(before.id());
            }
        }
        Tag tag = new Tag(
                TagId.fresh(),
                pass,
                scorer,
                Tag.Kind.CANNOT_SCORE,
                KEY,
                Optional.empty(),
                recordingFrame,
                time,
                reason.strip(),
                at);
        book.herd().put(tag);
        return tag;
    }
}
