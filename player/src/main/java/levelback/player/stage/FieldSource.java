package levelback.player.stage;

import java.nio.ByteBuffer;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import levelback.clips.decode.Field;
import levelback.clips.decode.FrameReader;
import levelback.clips.decode.Span;
import levelback.clips.index.IndexedFrame;
import levelback.clips.open.Clip;
import levelback.clips.open.ClipException;

/**
 * The fields of an interlaced clip as pictures of their own: picture {@code 2n} is the field of frame {@code n} that is
 * shown first, at the frame's time, picture {@code 2n + 1} the other, half-way to the next frame.
 */
final class FieldSource implements FrameSource {

    private final Clip clip;

    FieldSource(Clip clip) {
        this.clip = clip;
    }

    @Override
    public int frameCount() {
        return 2 * clip.index().frames().size();
    }

    @Override
    public long timeUs(int picture) {
        List<IndexedFrame> frames = clip.index().frames();
        int frame = picture / 2;
        long at = frames.get(frame).timeUs();
        if (picture % 2 == 0) {
            return at;
        }
        long end = frame + 1 < frames.size()
                ? frames.get(frame + 1).timeUs()
                : frames.get(0).timeUs() + clip.facts().durationUs().orElse(0);
        return at + Math.max(0, end - at) / 2;
    }

    @Override
    public int widthPx() {
        return clip.facts().width();
    }

    @Override
    public int heightPx() {
        return clip.facts().height();
    }

    @Override
    public Reader open() throws ClipException {
        return open(() -> false);
    }

    @Override
    public Reader open(BooleanSupplier gone) throws ClipException {
        return new Fields(clip.readerOnShow(gone), 4 * widthPx());
    }

    /** Reads a frame's fields. */
    private record Fields(FrameReader reader, int strideBytes) implements Reader {
        @Override
        public void read(int picture, ByteBuffer bgra) throws ClipException {
            int frame = picture / 2;
            Field first = reader.firstField(frame);
            Field second = first == Field.TOP ? Field.BOTTOM : Field.TOP;
            reader.readBgra(frame, picture % 2 == 0 ? first : second, bgra, strideBytes);
        }

        @Override
        public boolean readsAhead() {
            return true;
        }

        @Override
        public boolean ahead(BooleanSupplier stop) {
            return reader.ahead(stop);
        }

        @Override
        public void passes(Optional<Span> pass, Optional<Span> next) {
            reader.passes(pass, next);
        }

        @Override
        public void close() {
            reader.close();
        }
    }
}
