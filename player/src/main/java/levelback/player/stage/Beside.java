package levelback.player.stage;

import java.util.Optional;
import levelback.clips.open.Clip;
import org.jspecify.annotations.Nullable;

/**
 * A second picture that goes in step with the first: then and now. A frame is held for it first; once it is joined to a frame
 * of the first picture, both move by the same time on their own streams' clocks, so that recordings of different rates stay
 * in step. On the JavaFX thread; the second clip has a decoder thread of its own.
 */
public final class Beside implements AutoCloseable {

    private final PictureView view = new PictureView();
    private final PicturePlayer player = new PicturePlayer(view);
    private final PicturePlayer lead;

    private int first;
    private int last;
    private int heldAt;
    private boolean joined;
    private long leadJoinUs;
    private long joinUs;

    /** @param lead the first picture */
    public Beside(PicturePlayer lead) {
        this.lead = lead;
        view.setId("picture-beside");
        view.setAccessibleText(StageWords.of("beside.accessible"));
    }

    /** The second picture, for the page to place. */
    public PictureView view() {
        return view;
    }

    /** The player of the second picture. */
    public PicturePlayer player() {
        return player;
    }

    /** Whether there is a second picture. */
    public boolean isOpen() {
        return player.clip().isPresent();
    }

    /** Whether the two go in step. */
    public boolean isJoined() {
        return joined;
    }

    /** Holds what the first picture shows as the second. */
    public void hold(int firstFrame, int lastFrame) {
        Optional<Clip> clip = lead.clip();
        if (clip.isPresent()) {
            first = firstFrame;
            last = lastFrame;
            heldAt = lead.shownFrame();
            player.open(clip.get(), first, last, heldAt);
        }
    }

    /** Joins the held frame to the frame that the first picture shows. */
    public void join() {
        @Nullable Clip now = lead.clip().orElse(null);
        @Nullable Clip then = player.clip().orElse(null);
        if (now != null && then != null) {
            leadJoinUs = now.index().frames().get(lead.shownFrame()).timeUs();
            joinUs = then.index().frames().get(heldAt).timeUs();
            joined = true;
        }
    }

    /** The first picture shows another pass: the second is held where it was, until it is joined again. */
    public void part() {
        if (joined) {
            joined = false;
            player.show(heldAt);
        }
    }

    /** The first picture came to a frame. */
    public void follow(int leadFrame) {
        @Nullable Clip now = lead.clip().orElse(null);
        @Nullable Clip then = player.clip().orElse(null);
        if (!joined || now == null || then == null) {
            return;
        }
        long onUs = now.index().frames().get(leadFrame).timeUs() - leadJoinUs;
        player.show(nearest(then, joinUs + onUs));
    }

    /** The frame nearest to a time: two streams' times differ by a rounding, which must not cost a whole frame. */
    private static int nearest(Clip clip, long timeUs) {
        int before = clip.index().frameAt(timeUs);
        int after = Math.min(before + 1, clip.index().frames().size() - 1);
        long toBefore = Math.abs(timeUs - clip.index().frames().get(before).timeUs());
        long toAfter = Math.abs(clip.index().frames().get(after).timeUs() - timeUs);
        return toAfter < toBefore ? after : before;
    }

    /** Puts the second picture away. */
    @Override
    public void close() {
        joined = false;
        player.close();
    }
}
