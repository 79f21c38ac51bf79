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
    private int first;
    private int last;
    private int shown;
    private int wanted;
    private boolean walking;
    private double rate = 1;
    private @Nullable Walk loop;

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
            feed = new FrameFeed(FrameSource.of(newClip), facts.file().getFileName() + "");
            view.shape(facts.width(), facts.height(), facts.squareWidth(), facts.rotationDegrees());
            pulse.start();
        }
        walking = false;
        loop = null;
        first = firstFrame;
        last = lastFrame;
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
        return shown;
    }

    /** The frame that was asked for last; the screen may lag behind it. */
    public int wantedFrame() {
        return wanted;
    }

    /** Whether she walks. */
    public boolean isWalking() {
        return walking;
    }

    /** 1 is her own pace; negative is backwards. */
    public double rate() {
        return rate;
    }

    /** The span that is looped, if any. */
    public Optional<Walk> loop() {
        return Optional.ofNullable(loop);
    }

    /** Pictures that were due but skipped, of the clip on show. */
    public long dropped() {
        return feed == null ? 0 : feed.dropped();
    }

    /** Stands at a frame of the span. */
    public void show(int frame) {
        walking = false;
        wanted = Math.max(first, Math.min(last, frame));
        if (feed != null) {
            feed.show(wanted);
        }
    }

    /** Stands, some frames on (or back, below 0) from the frame asked for last. */
    public void step(int frames) {
        show((walking ? shown : wanted) + frames);
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
        walking = true;
        feed.walk(from, new Walk(rate, low, high, loop != null));
    }

    /** Stands at the frame on the screen. */
    public void stand() {
        show(shown);
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
                : new Walk(1, Math.max(first, fromFrame), Math.min(last, toFrame), true);
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
            onUnreadable.accept(unreadable);
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
        onFrame.accept(frame);
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
