package levelback.player.stage;

import java.nio.ByteBuffer;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import levelback.clips.decode.FrameReader;
import levelback.clips.decode.Span;
import levelback.clips.open.ClipException;

/** The frames of a clip as the feed takes them. */
final class ClipReader implements FrameSource.Reader {

    private final FrameReader reader;
    private final int strideBytes;

    ClipReader(FrameReader reader, int strideBytes) {
        this.reader = reader;
        this.strideBytes = strideBytes;
    }

    @Override
    public void read(int frame, ByteBuffer bgra) throws ClipException {
        reader.readBgra(frame, bgra, strideBytes);
    }

    @Override
    public void read(int frame, ByteBuffer bgra, BooleanSupplier stop) throws ClipException {
        reader.readBgra(frame, bgra, strideBytes, stop);
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
