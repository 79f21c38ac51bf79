package levelback.clips.write;

import java.nio.ByteBuffer;
import java.util.List;

/** What is drawn over the pictures of a clip: labels, the time, a strip. */
@FunctionalInterface
public interface Overlay {

    /** Nothing. */
    Overlay NONE = (frame, timeUs) -> List.of();

    /**
     * A picture to lay over another: blue, green, red, alpha bytes, straight alpha, rows packed.
     *
     * @param x left edge in the upright picture; parts outside of it are cut off
     * @param y top edge
     * @param width in pixels
     * @param height in pixels
     * @param bgra from byte 0 on
     */
    record Layer(int x, int y, int width, int height, ByteBuffer bgra) {
        public Layer {
            if (width < 1 || height < 1 || bgra.capacity() < 4L * width * height) {
                throw new IllegalArgumentException(width + " by " + height + " in " + bgra);
            }
        }

        /** Lays it over a picture of packed rows. */
        void over(ByteBuffer picture, int pictureWidth, int pictureHeight) {
            for (int row = Math.max(0, -y); row < height && y + row < pictureHeight; row++) {
                for (int column = Math.max(0, -x); column < width && x + column < pictureWidth; column++) {
                    int from = 4 * (row * width + column);
                    int alpha = bgra.get(from + 3) & 0xFF;
                    if (alpha == 0) {
                        continue;
                    }
                    int to = 4 * ((y + row) * pictureWidth + x + column);
                    for (int channel = 0; channel < 3; channel++) {
                        int under = picture.get(to + channel) & 0xFF;
                        int above = bgra.get(from + channel) & 0xFF;
                        picture.put(to + channel, (byte) ((above * alpha + under * (255 - alpha) + 127) / 255));
                    }
                }
            }
        }
    }

    /**
     * The layers for a frame, from the lowest up.
     *
     * @param frame its number
     * @param afterUs microseconds since frame 0 of the recording
     */
    List<Layer> over(int frame, long afterUs);
}
