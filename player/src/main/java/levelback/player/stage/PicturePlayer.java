package levelback.player.stage;

import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.IntConsumer;
import javafx.animation.AnimationTimer;
import levelback.clips.decode.Span;
import levelback.clips.open.Clip;
import levelback.clips.open.ClipFacts;
import org.jspecify.annotations.Nullable;

/**
 * Steps and walks through one span of a recording and keeps a {@link PictureView} showing it. Frames are numbered in the
 * recording. Everything is called, and calls back, on the JavaFX thread; nothing here waits.
 */
public final class PicturePlayer implements AutoCloseable {

    private final PictureView view;
    private final AnimationTimer pulse = new AnimationTimer() {
        @Override
        public void handle(long now) {
            // The queue's clock is nanoTime; a pulse's own stamp may lag behind it.
            take(System.nanoTime());
        }
    };

    private Consumer<FrameFeed.Shown.Unreadable> onUnreadable = unreadable -> {};
    private IntConsumer onFrame = frame -> {};
    private Runnable onStand = () -> {};

    private @Nullable Clip clip;
    private @Nullable FrameFeed feed;

    /** Pictures of a frame: 2 while its fields are shown one after the other. From here on all is counted in pictures. */
    private int each = 1;

    private int first;
    private int last;
    private int shown;
    private int wanted;
    private boolean walking;
    private double rate = 1;
    private @Nullable Walk loop;
    private long droppedBefore;

    public PicturePlayer(PictureView view) {
        this.view = view;
    }

    /** Called with each frame that comes on the screen. */
    public void setOnFrame(IntConsumer listener) {
        onFrame = listener;
    }

    /** Called when a frame can't be read; what was shown stays. */
    public void setOnUnreadable(Consumer<FrameFeed.Shown.Unreadable> listener) {
        onUnreadable = listener;
    }

    /** Called when a walk comes to its end by itself. */
    public void setOnStand(Runnable listener) {
        onStand = listener;
    }

    /** Shows a span of a clip at a frame; the same clip again keeps its decoder. */
    public void open(Clip newClip, int firstFrame, int lastFrame, int atFrame) {
        open(newClip, firstFrame, lastFrame, atFrame, Optional.empty());
    }

    /** As {@link #open(Clip, int, int, int)}, with the span of the same clip that is likely to be opened next. */
    public void open(Clip newClip, int firstFrame, int lastFrame, int atFrame, Optional<Span> next) {
        if (newClip != clip) {
            close();
            ClipFacts facts = newClip.facts();
            clip = newClip;
            each = 1;
            feed = new FrameFeed(FrameSource.of(newClip), facts.file().getFileName() + "");
            view.shape(facts.width(), facts.height(), facts.squareWidth(), facts.rotationDegrees());
            pulse.start();
        }
        walking = false;
        loop = null;
        first = firstFrame * each;
        last = lastFrame * each + each - 1;
        droppedBefore = dropped();
        if (feed != null && firstFrame <= lastFrame) {
            feed.passes(Optional.of(new Span(firstFrame, lastFrame)), next);
        }
        show(atFrame);
    }

    /** The clip on show. */
    public Optional<Clip> clip() {
        return Optional.ofNullable(clip);
    }

    /** The frame on the screen. */
    public int shownFrame() {
        return shown / each;
    }

    /** The frame that was asked for last; the screen may lag behind it. */
    public int wantedFrame() {
        return wanted / each;
    }

    /** Whether she walks. */
    public boolean isWalking() {
        return walking;
    }

    /** 1 is her own pace; negative is backwards. */
    public double rate() {
        return rate;
    }

    /** The span that is looped, if any, in frames. */
    public Optional<Walk> loop() {
        return Optional.ofNullable(loop)
                .map(pictures -> new Walk(pictures.rate(), pictures.first() / each, pictures.last() / each, true));
    }

    /** Whether the two fields of each frame are shown one after the other, each at its own time. */
    public boolean isByFields() {
        return each == 2;
    }

    /** On show: 0 for the field that comes first, and for a whole frame; 1 for the field that comes second. */
    public int shownField() {
        return shown % each;
    }

    /**
     * Shows an interlaced clip by its fields, or again by frames, standing at the same frame. Where fields are shown, one
     * step is one field; longer steps stay in frames.
     */
    public void setByFields(boolean fields) {
        Clip now = clip;
        FrameFeed before = feed;
        if (now == null || before == null || fields == isByFields()) {
            return;
        }
        int frame = wantedFrame();
        int from = first / each;
        int to = last / each;
        before.close();
        each = fields ? 2 : 1;
        feed = new FrameFeed(
                fields ? new FieldSource(now) : FrameSource.of(now),
                now.facts().file().getFileName() + "");
        open(now, from, to, frame);
    }

    /** Pictures that were due but skipped, of the clip on show. */
    public long dropped() {
        return feed == null ? 0 : feed.dropped();
    }

    /** Pictures that were not shown in time since the walk began, or since the span was opened. */
    public long notShown() {
        return dropped() - droppedBefore;
    }

    /** Stands at the frame on the screen at a time on the stream's own clock, held to the span. */
    public void showTime(long timeUs) {
        if (clip != null) {
            show(clip.index().frameAt(timeUs));
        }
    }

    /**
     * Stands some time on (or back, below 0) from the frame asked for last, by the stream's own times; by one frame at least,
     * so that a gap in the recording does not hold it.
     */
    public void stepTime(long us) {
        if (clip == null) {
            return;
        }
        int from = (walking ? shown : wanted) / each;
        int to = clip.index().frameAt(clip.index().frames().get(from).timeUs() + us);
        show(us < 0 ? Math.min(to, from - 1) : Math.max(to, from + 1));
    }

    /** Stands at a frame of the span. */
    public void show(int frame) {
        showPicture(frame * each);
    }

    private void showPicture(int picture) {
        walking = false;
        wanted = Math.max(first, Math.min(last, picture));
        if (feed != null) {
            feed.show(wanted);
        }
    }

    /** Stands, some frames on (or back, below 0) from the frame asked for last. */
    public void step(int frames) {
        int pictures = Math.abs(frames) == 1 ? frames : frames * each;
        showPicture((walking ? shown : wanted) + pictures);
    }

    /** Walks on from here, at the end from the beginning. */
    public void walk() {
        if (feed == null) {
            return;
        }
        int from = walking ? shown : wanted;
        int low = loop == null ? first : loop.first();
        int high = loop == null ? last : loop.last();
        if (from < low || from > high || (loop == null && from == (rate > 0 ? high : low))) {
            from = rate > 0 ? low : high;
        }
        if (!walking) {
            droppedBefore = dropped();
        }
        walking = true;
        feed.walk(from, new Walk(rate, low, high, loop != null));
    }

    /** Stands at the frame on the screen. */
    public void stand() {
        showPicture(shown);
    }

    /** Changes the pace; a walk goes on with it. */
    public void setRate(double newRate) {
        rate = newRate;
        if (walking) {
            walk();
        }
    }

    /** Loops between two frames, or with none walks the whole span. */
    public void setLoop(@Nullable Integer fromFrame, @Nullable Integer toFrame) {
        loop = fromFrame == null || toFrame == null || fromFrame >= toFrame
                ? null
                : new Walk(1, Math.max(first, fromFrame * each), Math.min(last, toFrame * each + each - 1), true);
        if (walking) {
            walk();
        }
    }

    private void take(long nowNanos) {
        if (feed == null) {
            return;
        }
        FrameFeed.Shown next = feed.poll(nowNanos).orElse(null);
        if (next instanceof FrameFeed.Shown.Ready ready) {
            try {
                view.show(ready.picture());
            } finally {
                ready.picture().release();
            }
            arrive(next.frame());
        } else if (next instanceof FrameFeed.Shown.Unreadable unreadable) {
            arrive(next.frame());
            onUnreadable.accept(new FrameFeed.Shown.Unreadable(unreadable.frame() / each, unreadable.sentence()));
        } else if (next instanceof FrameFeed.Shown.Ended) {
            walking = false;
            wanted = next.frame();
            onStand.run();
        }
    }

    private void arrive(int frame) {
        shown = frame;
        if (walking) {
            wanted = frame;
        }
        onFrame.accept(frame / each);
    }

    /** Lets go of the clip; another can be opened. */
    @Override
    public void close() {
        pulse.stop();
        if (feed != null) {
            feed.close();
            feed = null;
        }
        clip = null;
        walking = false;
        view.clear();
    }
}
