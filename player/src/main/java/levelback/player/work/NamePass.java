package levelback.player.work;

import java.util.Optional;
import levelback.store.book.Book;
import levelback.store.book.StoreException;
import levelback.store.herd.Cow;
import levelback.store.herd.Herd;
import levelback.store.lane.Pass;
import levelback.store.lane.PassId;
import levelback.store.lane.Recording;

/** Says which cow a pass is. */
public final class NamePass {

    private final Book book;

    public NamePass(Book book) {
        this.book = book;
    }

    /**
     * @param number her number; one that the herd does not have yet is listed
     * @return the cow she is now
     * @throws StoreException with one sentence if the number cannot be, or if the pass was scored as another cow
     */
    public Cow name(Herd herd, PassId id, String number) {
        Pass pass = book.lane().pass(id).orElseThrow(() -> new StoreException("This pass is no longer in the book."));
        Recording recording = book.lane()
                .recording(pass.recording())
                .orElseThrow(() -> new StoreException("The recording of this pass is no longer in the book."));
        Cow cow = CowNumber.findOrList(book, herd.id(), number, MarkPass.dateOf(book, herd, recording.visit()));
        if (pass.cow().equals(Optional.of(cow.id()))) {
            return cow;
        }
        boolean scored = pass.cow().isPresent()
                && book.herd().scoresOf(recording.visit()).stream()
                        .anyMatch(score -> score.pass().equals(Optional.of(id)));
        if (scored) {
            throw new StoreException(
                    "This pass is scored; undo its score before giving it to cow " + cow.number() + ".");
        }
        book.lane()
                .put(new Pass(
                        pass.id(),
                        pass.recording(),
                        pass.fromFrame(),
                        pass.toFrame(),
                        pass.from(),
                        pass.to(),
                        pass.direction(),
                        Optional.of(cow.id())));
        return cow;
    }
}
