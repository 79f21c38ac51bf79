package levelback.player.stage;

import java.nio.ByteBuffer;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import levelback.clips.open.ClipException;

/** A film whose every pixel is its frame number; notes which thread does what. Not a double of our own code: a film. */
final class CountedFilm implements FrameSource {

    final int frames;
    final long frameUs;
    final Set<Integer> broken;
    final List<Integer> readOrder = new CopyOnWriteArrayList<>();
    final Set<Thread> threads = java.util.concurrent.ConcurrentHashMap.newKeySet();
    final AtomicInteger opened = new AtomicInteger();
    final AtomicInteger closed = new AtomicInteger();
    final AtomicReference<ClipException> refuses = new AtomicReference<>();
    volatile long readNanos;

    CountedFilm(int frames, long frameUs, Set<Integer> broken) {
        this.frames = frames;
        this.frameUs = frameUs;
        this.broken = broken;
    }

    @Override
    public int frameCount() {
        return frames;
    }

    @Override
    public long timeUs(int frame) {
        return frame * frameUs;
    }

    @Override
    public int widthPx() {
        return 64;
    }

    @Override
    public int heightPx() {
        return 48;
    }

    @Override
    public Reader open() throws ClipException {
        threads.add(Thread.currentThread());
        if (refuses.get() != null) {
            throw refuses.get();
        }
        opened.incrementAndGet();
        return new Reader() {
            @Override
            public void read(int frame, ByteBuffer bgra) throws ClipException {
                threads.add(Thread.currentThread());
                long until = System.nanoTime() + readNanos;
                while (System.nanoTime() < until) {
                    Thread.onSpinWait();
                }
                readOrder.add(frame);
                if (broken.contains(frame)) {
                    throw new ClipException(
                            ClipException.Reason.UNREADABLE_FRAME, "Frame " + frame + " can't be read.");
                }
                for (int i = 0; i < bgra.capacity(); i += 4) {
                    bgra.putInt(i, frame);
                }
            }

            @Override
            public void close() {
                threads.add(Thread.currentThread());
                closed.incrementAndGet();
            }
        };
    }
}
