package levelback.player.work;

import levelback.clips.index.IndexedFrame;
import levelback.clips.open.Clip;
import levelback.scoring.value.MediaTime;

/** The stream's own time of a frame, as the book keeps it. */
public final class FrameTime {

    private FrameTime() {}

    /**
     * Presentation time stamp of a frame in the stream's ticks; where the stream has none, its time in microseconds from
     * the index.
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
        return indexed.pts().isPresent()
                ? new MediaTime(indexed.pts().getAsLong(), clip.facts().timeBase())
                : MediaTime.ofMicros(indexed.timeUs());
    }
}
