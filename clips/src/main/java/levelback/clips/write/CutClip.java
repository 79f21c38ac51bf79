package levelback.clips.write;

import java.io.IOException;
import java.nio.file.FileSystemException;
import java.nio.file.Path;
import java.util.function.BooleanSupplier;
import java.util.function.DoubleConsumer;
import levelback.clips.decode.FrameColour;
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

    /** Code points of ITU-T H.273, table 4; every other matrix that a camera writes has the shares of BT.601. */
    private static final int BT_709 = 1;

    private static final int BT_2020 = 9;

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
        try (PartFile part = PartFile.beside(out);
                FrameReader reader = clip.reader(0)) {
            film(clip, span, overlay, reader, part.path(), progress, cancelled);
            part.finish();
        } catch (IOException failed) {
            throw new ClipException(
                    Reason.CANNOT_WRITE,
                    out + " could not be written" + detail(failed)
                            + "; check that its folder is there, may be written to and has room.");
        }
        long durationUs = Math.round(
                span.endTicks() * 1e6 * span.base().numerator() / span.base().denominator());
        return new Cut(span.first(), span.frames(), durationUs, facts.uprightWidth(), facts.uprightHeight());
    }

    private static void film(
            Clip clip,
            ClipSpan span,
            Overlay overlay,
            FrameReader reader,
            Path file,
            DoubleConsumer progress,
            BooleanSupplier cancelled)
            throws ClipException, IOException {
        ClipFacts facts = clip.facts();
        Yuv stored = Yuv.of(Math.max(1, facts.squareWidth()), facts.height());
        FrameColour colour = reader.readI420(span.first(), stored.planes(), stored.width(), stored.height());
        double redShare = colour.matrix() == BT_2020 ? .2627 : colour.matrix() == BT_709 ? .2126 : .299;
        double blueShare = colour.matrix() == BT_2020 ? .0593 : colour.matrix() == BT_709 ? .0722 : .114;
        long startUs = clip.index().frames().get(0).timeUs();
        Yuv first = stored.turned(facts.rotationDegrees());
        try (Mp4Writer film =
                new Mp4Writer(file, first.width(), first.height(), colour, span.base(), facts.averageFrameRate())) {
            for (int i = 0; i < span.frames(); i++) {
                if (cancelled.getAsBoolean()) {
                    throw new ClipException(
                            Reason.CANCELLED, "Cutting " + facts.file() + " was stopped; nothing was written.");
                }
                int frame = span.first() + i;
                reader.readI420(frame, stored.planes(), stored.width(), stored.height());
                Yuv picture = stored.turned(facts.rotationDegrees());
                long afterUs = clip.index().frames().get(frame).timeUs() - startUs;
                for (Overlay.Layer layer : overlay.over(frame, afterUs)) {
                    picture.lay(layer, redShare, blueShare);
                }
                film.write(picture, span.at(i), span.duration(i));
                progress.accept((i + 1.0) / span.frames());
            }
            film.finish();
        }
    }

    /** Java's own message is the name of the unfinished file, which tells a person nothing. */
    private static String detail(IOException failed) {
        return failed instanceof FileSystemException ? "" : " (" + failed.getMessage() + ")";
    }
}
