package levelback.clips.decode.internal;

import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.util.BitSet;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import levelback.clips.decode.Field;
import levelback.clips.decode.FrameColour;
import levelback.clips.decode.FrameReader;
import levelback.clips.decode.Span;
import levelback.clips.decode.internal.FrameCache.Kept;
import levelback.clips.open.ClipException;
import levelback.clips.open.ClipException.Reason;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.global.avcodec;
import org.bytedeco.ffmpeg.global.avutil;
import org.bytedeco.javacpp.Pointer;
import org.jspecify.annotations.Nullable;

/**
 * Exact frames by seeking. A frame is what its packet's name says it is; where the order comes from a full decode it must
 * also have that decode's check sum. A place to begin that does not deliver is struck out and an earlier one tried, at
 * last the start of the file.
 *
 * <p>Every picture that comes out on the way is kept as long as there is room, so that the way back costs no decoding; a
 * picture is held against its check sum when it is first given out.
 */
public final class ExactReader implements FrameReader {

    /** Decoding on costs less than a seek as long as the next key is no farther than this many packets ahead. */
    private static final int NEARBY_PACKETS = 8;

    /** Reading ahead decodes at most so many times what finds room, and then waits for a wish. */
    private static final long MOST_ROOMS_AHEAD = 4;

    private static final long TRIMMED_BYTES = 64L << 20;

    private final Path path;
    private final FrameOrder order;
    private final Memory memory;
    private final BooleanSupplier gone;
    private final Runnable distrusted;
    private final AVFrame arriving = avutil.av_frame_alloc();
    private final FrameCache cache;
    private final ReadAhead plan;
    private final Planes planes = new Planes();
    private final BgraPicture bgra;
    private final I420Picture i420 = new I420Picture();
    private final FieldPicture fields;
    private final BitSet struckOut = new BitSet();
    /** Frames that reading ahead has tried in vain. */
    private final BitSet inVain = new BitSet();

    private final DecodeRun run;
    /** Pictures decoded since a frame was last asked for. */
    private long decodedAhead;

    private boolean closed;

    /**
     * What is read.
     *
     * @param file the file
     * @param order its frames
     * @param threads of the decoder; 1 for damaged files, where concealment depends on their number
     * @param width of the pictures that {@link #readBgra} gives
     * @param height of the pictures that {@link #readBgra} gives
     * @param distrusted run when a frame can't be had at all, so that what is kept about the file may be out of date
     */
    public record Source(Path file, FrameOrder order, int threads, int width, int height, Runnable distrusted) {}

    /**
     * @param memory what its decoded pictures may weigh
     * @param gone polled while the file is read and decoded: once true, every read fails
     */
    public ExactReader(Source source, Memory memory, BooleanSupplier gone) throws ClipException {
        this.path = source.file();
        this.order = source.order();
        this.memory = memory;
        this.gone = gone;
        this.distrusted = source.distrusted();
        this.bgra = new BgraPicture(source.width(), source.height());
        this.fields = new FieldPicture(source.width(), source.height());
        this.plan = new ReadAhead(order.frames());
        this.run = new DecodeRun(path, order, source.threads(), gone);
        memory.open();
        this.cache = new FrameCache(memory::bytes);
    }

    @Override
    public String md5(int frame) throws ClipException {
        return planes.md5(picture(frame, () -> false));
    }

    @Override
    public void readBgra(int frame, ByteBuffer into, int strideBytes) throws ClipException {
        readBgra(frame, into, strideBytes, () -> false);
    }

    @Override
    public void readBgra(int frame, ByteBuffer into, int strideBytes, BooleanSupplier stop) throws ClipException {
        bgra.convert(picture(frame, stop), into, strideBytes, MediaFile.name(path));
    }

    @Override
    public FrameColour readI420(int frame, ByteBuffer into, int width, int height) throws ClipException {
        return i420.convert(picture(frame, () -> false), into, width, height, MediaFile.name(path));
    }

    @Override
    public Field firstField(int frame) throws ClipException {
        AVFrame picture = picture(frame, () -> false);
        // An interlaced picture that does not say so begins below; a whole one has no order, and is told from the top.
        boolean bottom = (picture.flags() & FrameDecoder.FLAG_INTERLACED) != 0
                && (picture.flags() & FrameDecoder.FLAG_TOP_FIRST) == 0;
        return bottom ? Field.BOTTOM : Field.TOP;
    }

    @Override
    public String md5(int frame, Field field) throws ClipException {
        return fields.md5(picture(frame, () -> false), field);
    }

    @Override
    public void readBgra(int frame, Field field, ByteBuffer into, int strideBytes) throws ClipException {
        fields.convert(picture(frame, () -> false), field, into, strideBytes, MediaFile.name(path));
    }

    @Override
    public void decode(int frame) throws ClipException {
        picture(frame, () -> false);
    }

    @Override
    public void passes(Optional<Span> pass, Optional<Span> next) {
        decodedAhead = 0;
        plan.passes(pass.orElse(null), next.orElse(null));
    }

    @Override
    public boolean ahead(BooleanSupplier stop) {
        requireOpen();
        int room = cache.room();
        int frame = plan.next(n -> cache.has(n) || inVain.get(n), room);
        if (frame == ReadAhead.NOTHING || decodedAhead > MOST_ROOMS_AHEAD * room) {
            return false;
        }
        try {
            if (reach(frame, stop) == null) {
                inVain.set(frame);
            }
        } catch (ClipException e) {
            if (e.reason() != Reason.CANCELLED) {
                inVain.set(frame); // said when somebody asks for it
            }
        }
        return true;
    }

    @Override
    public long bytesKept() {
        return cache.bytes();
    }

    private void requireOpen() {
        if (closed) {
            throw new IllegalStateException("closed");
        }
    }

    private AVFrame picture(int frame, BooleanSupplier stop) throws ClipException {
        requireOpen();
        if (frame < 0 || frame >= order.frames()) {
            throw new ClipException(
                    Reason.PAST_THE_END,
                    "There is no frame " + frame + " in " + MediaFile.name(path) + "; its frames are numbered 0 to "
                            + (order.frames() - 1) + ".");
        }
        plan.at(frame);
        inVain.clear();
        decodedAhead = 0;
        Kept kept = reach(frame, stop);
        if (kept == null) {
            distrusted.run();
            throw new ClipException(
                    Reason.UNREADABLE_FRAME,
                    "Frame " + frame + " of " + MediaFile.name(path)
                            + " does not come out of the decoder; the file is damaged there, so choose another frame.");
        }
        return kept.picture();
    }

    /** A frame that is what a decode from the start gives, or null where it is not to be had. */
    private @Nullable Kept reach(int frame, BooleanSupplier stop) throws ClipException {
        Kept known = cache.get(frame);
        if (known != null) {
            if (proved(frame, known)) {
                return known;
            }
            strikeOut(known.from());
        }
        int key = order.keyFor(frame, struckOut);
        boolean onTheWay = run.ahead(frame)
                && !isStruckOut(run.from())
                && (key < 0 || order.keyPacket(key) <= run.nextPacket() + NEARBY_PACKETS);
        Kept found = onTheWay ? runTo(frame, stop) : null;
        while (found == null && key >= 0) {
            found = run.seekTo(key) ? runTo(frame, stop) : null;
            if (found == null) {
                struckOut.set(key);
                key = order.keyFor(frame, struckOut);
            }
        }
        if (found == null) {
            run.restart();
            found = runTo(frame, stop);
        }
        return found;
    }

    private void strikeOut(int key) {
        if (key != DecodeRun.FROM_START) {
            struckOut.set(key);
        }
    }

    private boolean isStruckOut(int key) {
        return key != DecodeRun.FROM_START && struckOut.get(key);
    }

    /** Decodes on until a frame has come out; null if it is not to be had in this run. */
    private @Nullable Kept runTo(int wanted, BooleanSupplier stop) throws ClipException {
        while (true) {
            if (stop.getAsBoolean() || gone.getAsBoolean()) {
                throw MediaFile.cancelled(path);
            }
            int frame = run.next(arriving);
            if (frame == DecodeRun.OVER) {
                return null;
            }
            cache.put(frame, arriving, run.from(), plan);
            decodedAhead++;
            if (frame >= wanted) {
                Kept kept = cache.get(frame);
                return frame == wanted && kept != null && proved(frame, kept) ? kept : null;
            }
        }
    }

    /** Holds a picture against its check sum, once; one that fails is let go of. */
    private boolean proved(int frame, Kept kept) {
        if (!kept.proved()) {
            if (!order.checks().known(frame)) {
                return true; // perhaps the next time
            }
            if (kept.from() == DecodeRun.FROM_START && !order.checks().certain(frame)) {
                return true; // of the two this one is right
            }
            if (!order.checks().allows(frame, planes.check(kept.picture()))) {
                cache.drop(frame);
                return false;
            }
            kept.prove();
        }
        return true;
    }

    @Override
    public void close() {
        if (!closed) {
            closed = true;
            boolean much = cache.bytes() > TRIMMED_BYTES;
            run.close();
            cache.close();
            memory.close();
            if (much) {
                Pointer.trimMemory(); // else the C library keeps what the decoder's threads have freed
            }
            planes.close();
            bgra.close();
            i420.close();
            fields.close();
            avutil.av_frame_free(arriving);
        }
    }

    static {
        // Touch the codec library before the first frame is due.
        avcodec.avcodec_version();
    }
}
