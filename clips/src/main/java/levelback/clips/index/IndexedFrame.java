package levelback.clips.index;

import java.util.OptionalLong;

/**
 * One frame as the index knows it.
 *
 * @param frame number in presentation order, from 0
 * @param pts presentation time stamp in the stream's ticks; empty where the stream has none
 * @param timeUs its time in microseconds on the stream's own clock (from the frame rate where there is no stamp)
 * @param keyFrame the decoder's key-frame flag
 */
public record IndexedFrame(int frame, OptionalLong pts, long timeUs, boolean keyFrame) {}
