package levelback.clips.write;

import java.nio.ByteBuffer;
import java.util.List;

/** What is drawn over the pictures of a clip: labels, the time, a strip. */
@FunctionalInterface
public interface Overlay {

    /** Nothing. */
    Overlay NONE = (frame, afterUs) -> List.of();

    /**
     * A picture to lay over another.
     *
     * @param x left edge in the upright picture; parts outside of it are cut off
     * @param y top edge
     * @param width in pixels
     * @param height in pixels
     * @param bgra blue, green, red, alpha bytes (alpha not multiplied in), rows packed, from byte 0 on
     */
    record Layer(int x, int y, int width, int height, ByteBuffer bgra) {
        public Layer {
            if (width < 1 || height < 1 || bgra.capacity() < 4L * width * height) {
                throw new IllegalArgumentException(width + " by " + height + " in " + bgra);
            }
        }

        private boolean inside(int px, int py) {
            return px >= x && px < x + width && py >= y && py < y + height;
        }

        /** 0 to 1; 0 outside. Places are those of the picture below. */
        double alpha(int px, int py) {
            return inside(px, py) ? channel(px, py, 3) : 0;
        }

        /** Blue 0, green 1, red 2, alpha 3, each 0 to 1; 0 outside. */
        double channel(int px, int py, int channel) {
            return inside(px, py) ? (bgra.get(4 * ((py - y) * width + px - x) + channel) & 0xFF) / 255.0 : 0;
        }

        /** Brightness, 0 to 1, by a matrix of these shares. */
        double luma(int px, int py, double redShare, double blueShare) {
            return redShare * channel(px, py, 2)
                    + (1 - redShare - blueShare) * channel(px, py, 1)
                    + blueShare * channel(px, py, 0);
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
