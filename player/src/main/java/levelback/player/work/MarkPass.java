package levelback.player.work;

import java.time.LocalDate;
import java.util.Optional;
import levelback.clips.open.Clip;
import levelback.store.book.Book;
import levelback.store.book.StoreException;
import levelback.store.herd.Cow;
import levelback.store.herd.CowId;
import levelback.store.herd.Herd;
import levelback.store.herd.VisitId;
import levelback.store.lane.Pass;
import levelback.store.lane.PassId;
import levelback.store.lane.Recording;

/** Marks a span of a recording as one cow's pass. */
public final class MarkPass {

    private final Book book;

    public MarkPass(Book book) {
        this.book = book;
    }

    /**
     * @param clip the recording as it was read, for the stream's own times
     * @param fromFrame first frame of the pass, numbered in the recording
     * @param toFrame last frame of it, included
     * @param number her number; empty leaves her unknown. A number that the herd does not have yet is listed
     * @throws StoreException with one sentence if the frames or the number cannot be
     */
    public Pass mark(
            Herd herd,
            Recording recording,
            Clip clip,
            int fromFrame,
            int toFrame,
            Pass.Direction direction,
            Optional<String> number) {
        int last = clip.index().frames().size() - 1;
        if (fromFrame < 0 || toFrame > last) {
            throw new StoreException("The recording has frames 1 to %d; frames %d to %d are not all in it."
                    .formatted(last + 1, fromFrame + 1, toFrame + 1));
        }
        if (fromFrame > toFrame) {
            throw new StoreException("The last frame (%d) lies before the first (%d); mark the first frame again."
                    .formatted(toFrame + 1, fromFrame + 1));
        }
        Optional<CowId> cow = number.map(
                        typed -> CowNumber.findOrList(book, herd.id(), typed, dateOf(book, herd, recording.visit())))
                .map(Cow::id);
        Pass pass = new Pass(
                PassId.fresh(),
                recording.id(),
                fromFrame,
                toFrame,
                FrameTime.of(clip, fromFrame),
                FrameTime.of(clip, toFrame),
                direction,
                cow);
        book.lane().put(pass);
        return pass;
    }

    static LocalDate dateOf(Book book, Herd herd, VisitId visit) {
        return book.herd().visits(herd.id()).stream()
                .filter(v -> v.id().equals(visit))
                .findFirst()
                .orElseThrow(() -> new StoreException("The recording's visit is not in this book."))
                .date();
    }
}
