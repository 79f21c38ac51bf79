package levelback.clips.decode.internal;

import java.nio.file.Path;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import levelback.clips.open.ClipException;
import levelback.clips.open.ClipException.Reason;
import org.bytedeco.ffmpeg.global.avcodec;
import org.jspecify.annotations.Nullable;

/**
 * The first look at a recording: its packets, the order of its frames and what is wrong with it.
 *
 * <p>The order of the packets' time stamps is taken where it is safe: in a container with stamps of its own, with one
 * stamp for every packet, from a key picture on, nothing missing, and when the first pictures decoded agree with it.
 * Everything else, and every short file, is decoded once from start to end; that also gives every picture a check sum.
 */
public final class Survey {

    private static final int TRIED_FRAMES = 24;

    private final FrameOrder order;
    private final PictureShape shape;
    private final boolean interlaced;
    private final int decodeThreads;
    private final @Nullable FullDecode all;

    private Survey(
            FrameOrder order, PictureShape shape, boolean interlaced, int decodeThreads, @Nullable FullDecode all) {
        this.order = order;
        this.shape = shape;
        this.interlaced = interlaced;
        this.decodeThreads = decodeThreads;
        this.all = all;
    }

    /**
     * @param file freshly opened; it is at its end afterwards
     * @param decodeUpToPixels files with at most so many pixels in all are decoded whatever their packets look like
     */
    public static Survey of(MediaFile file, long decodeUpToPixels, BooleanSupplier cancelled) throws ClipException {
        PacketList packets = PacketList.scan(file, cancelled);
        Path path = file.file();
        Optional<FrameOrder> quick = FrameOrder.fromPackets(file, packets);
        long pixels = (long) packets.count()
                * Math.max(1, file.stream().codecpar().width())
                * Math.max(1, file.stream().codecpar().height());
        if (quick.isPresent() && pixels > decodeUpToPixels) {
            FullDecode beginning = decode(path, TRIED_FRAMES, FrameDecoder.threads(), cancelled);
            PictureShape shape = beginning.shape;
            if (shape != null && quick.get().agreesWith(beginning) && !(beginning.interlaced && racing(file))) {
                return new Survey(quick.get(), shape, beginning.interlaced, FrameDecoder.threads(), null);
            }
        }
        int threads = FrameDecoder.threads();
        FullDecode all = decode(path, Integer.MAX_VALUE, threads, cancelled);
        boolean doubtful = all.heard || all.errors > 0 || !all.suspect.isEmpty() || all.count != packets.count();
        if (threads > 1 && (doubtful || (all.interlaced && racing(file)))) {
            threads = 1; // what a decoder makes of damage must not hang on how its threads happen to run
            all = decode(path, Integer.MAX_VALUE, threads, cancelled);
        }
        PictureShape shape = all.shape;
        if (shape == null) {
            throw new ClipException(
                    Reason.BROKEN,
                    "No picture comes out of " + MediaFile.name(path)
                            + ": the file is damaged from its start; copy it from the camera again.");
        }
        return new Survey(FrameOrder.fromDecode(file, packets, all), shape, all.interlaced, threads, all);
    }

    /**
     * Codecs whose decoder gives other pictures with other numbers of threads where fields are predicted from fields:
     * FFmpeg's for MPEG-4 part 2, from release 5.1 to 8.0 at least (seen with two, three and four threads).
     */
    private static boolean racing(MediaFile file) {
        return file.stream().codecpar().codec_id() == avcodec.AV_CODEC_ID_MPEG4;
    }

    private static FullDecode decode(Path path, int most, int threads, BooleanSupplier cancelled) throws ClipException {
        try (MediaFile again = MediaFile.open(path, cancelled)) {
            return FullDecode.of(again, most, threads, cancelled);
        }
    }

    /** The frames in order. */
    public FrameOrder order() {
        return order;
    }

    /** How the pictures are stored. */
    public PictureShape shape() {
        return shape;
    }

    /** Whether pictures are marked as two fields. */
    public boolean interlaced() {
        return interlaced;
    }

    /** Threads with which every reader of this file decodes. */
    public int threads() {
        return decodeThreads;
    }

    /** Whether the whole file was decoded. */
    public boolean decoded() {
        return all != null;
    }

    /** The decode of the whole file, where there was one. */
    Optional<FullDecode> wholeDecode() {
        return Optional.ofNullable(all);
    }
}
