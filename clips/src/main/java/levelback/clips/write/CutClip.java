package levelback.clips.write;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.FileSystemException;
import java.nio.file.Path;
import java.util.function.BooleanSupplier;
import java.util.function.DoubleConsumer;
import levelback.clips.decode.FrameReader;
import levelback.clips.open.Clip;
import levelback.clips.open.ClipException;
import levelback.clips.open.ClipException.Reason;
import levelback.clips.open.ClipFacts;

/**
 * A span of a recording as a film of its own: frame for frame, each shown for as long as in the recording, upright, with
 * square pixels. Its first frame is at 0. Without sound.
 */
public final class CutClip {

    private CutClip() {}

    /**
     * What was written.
     *
     * @param firstFrame number of its first frame in the recording
     * @param frames how many
     * @param durationUs from the first to the end of the last
     * @param width of the film
     * @param height of the film
     */
    public record Cut(int firstFrame, int frames, long durationUs, int width, int height) {}

    /**
     * Cuts from the frame on show at {@code fromS} to the last that starts before {@code toS}, in seconds from frame 0; at
     * least one frame.
     *
     * @param overlay what is drawn over the pictures
     * @param out where to; written beside its place and moved there when whole
     * @param progress told the fraction done
     * @param cancelled polled at every frame; then nothing is left behind
     * @throws ClipException with one sentence if the span lies past the end, a frame cannot be read, or the file not be
     *     written
     */
    public static Cut write(
            Clip clip,
            double fromS,
            double toS,
            Overlay overlay,
            Path out,
            DoubleConsumer progress,
            BooleanSupplier cancelled)
            throws ClipException {
        ClipSpan span = ClipSpan.of(clip, fromS, toS);
        ClipFacts facts = clip.facts();
        int width = Math.max(1, facts.uprightWidth());
        int height = Math.max(1, facts.uprightHeight());
        try (PartFile part = PartFile.beside(out);
                FrameReader reader = clip.reader(0)) {
            try (Mp4Writer film = new Mp4Writer(part.path(), width, height, span.base(), facts.averageFrameRate())) {
                for (int i = 0; i < span.frames(); i++) {
                    if (cancelled.getAsBoolean()) {
                        throw new ClipException(
                                Reason.CANCELLED, "Cutting " + facts.file() + " was stopped; nothing was written.");
                    }
                    int frame = span.first() + i;
                    ByteBuffer picture = Still.upright(clip, reader, frame);
                    long afterUs = clip.index().frames().get(frame).timeUs()
                            - clip.index().frames().get(0).timeUs();
                    for (Overlay.Layer layer : overlay.over(frame, afterUs)) {
                        layer.over(picture, width, height);
                    }
                    film.write(picture, span.ticks()[i], span.duration(i));
                    progress.accept((i + 1.0) / span.frames());
                }
                film.finish();
            }
            part.finish();
        } catch (IOException failed) {
            throw new ClipException(
                    Reason.CANNOT_WRITE,
                    out + " could not be written" + detail(failed)
                            + "; check that its folder is there, may be written to and has room.");
        }
        long durationUs = Math.round(span.endTicks() * 1e6 * span.base().numerator() / span.base().denominator());
        return new Cut(span.first(), span.frames(), durationUs, width, height);
    }

    /** Java's own message is the name of the unfinished file, which tells a person nothing. */
    private static String detail(IOException failed) {
        return failed instanceof FileSystemException ? "" : " (" + failed.getMessage() + ")";
    }
}
