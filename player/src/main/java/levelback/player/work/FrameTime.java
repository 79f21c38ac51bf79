package levelback.player.work;

import levelback.clips.index.IndexedFrame;
import levelback.clips.open.Clip;
import levelback.scoring.value.MediaTime;
import levelback.scoring.value.TimeBase;

/** The stream's own time of a frame, as the book keeps it. */
public final class FrameTime {

    private FrameTime() {}

    /**
     * Presentation time stamp of a frame in the stream's ticks. A frame without one, among others that have it, gets the
     * tick nearest to its time in the index, so that all frames of a stream are on one clock; where no frame has one, the
     * time in microseconds.
     *
     * @param frame number in the recording, from 0
     * @throws IllegalArgumentException if there is no such frame
     */
    public static MediaTime of(Clip clip, int frame) {
        if (frame < 0 || frame >= clip.index().frames().size()) {
            throw new IllegalArgumentException(
                    "frame " + frame + " of " + clip.index().frames().size());
        }
        IndexedFrame indexed = clip.index().frames().get(frame);
        TimeBase base = clip.facts().timeBase();
        if (indexed.pts().isPresent()) {
            return new MediaTime(indexed.pts().getAsLong(), base);
        }
        if (clip.index().frames().stream().anyMatch(f -> f.pts().isPresent())) {
            double ticksPerUs = base.denominator() / (base.numerator() * 1e6);
            return new MediaTime(Math.round(indexed.timeUs() * ticksPerUs), base);
        }
        return MediaTime.ofMicros(indexed.timeUs());
    }
}
