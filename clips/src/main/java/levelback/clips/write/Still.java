package levelback.clips.write;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import levelback.clips.decode.Field;
import levelback.clips.decode.FrameReader;
import levelback.clips.index.IndexedFrame;
import levelback.clips.open.Clip;
import levelback.clips.open.ClipException;
import levelback.clips.open.ClipException.Reason;
import levelback.clips.open.ClipFacts;

/** One frame as a person should see it: upright, with square pixels and the right colours. */
public final class Still {

    private Still() {}

    /**
     * The frame on show a number of seconds after frame 0: the last whose time is at or before it; before the first,
     * frame 0.
     *
     * @throws ClipException if the recording has ended by then
     */
    public static int frameAt(Clip clip, double seconds) throws ClipException {
        long startUs = clip.facts().startUs().orElse(0);
        long durationUs = clip.facts().durationUs().orElse(0);
        double afterUs = seconds * 1e6;
        if (!(afterUs < durationUs)) {
            throw new ClipException(
                    Reason.PAST_THE_END,
                    "There is no picture at %s s in %s; it ends at %.3f s."
                            .formatted(seconds, clip.facts().file(), durationUs / 1e6));
        }
        return clip.index().frameAt(startUs + Math.round(Math.max(0, afterUs)));
    }

    /** Decodes a frame and writes it as PNG: height kept, width made good for the pixel shape, then turned upright. */
    public static void write(Clip clip, int frame, Path png) throws ClipException {
        write(clip, frame, Optional.empty(), png);
    }

    /**
     * Decodes a frame, or one field of it, and writes it as PNG: height kept, width made good for the pixel shape, then
     * turned upright. A field's lines stand where they belong, and each line between is the mean of its neighbours.
     */
    public static void write(Clip clip, int frame, Optional<Field> field, Path png) throws ClipException {
        ByteBuffer upright;
        try (FrameReader reader = clip.reader()) {
            upright = upright(clip, reader, frame, field);
        }
        ClipFacts facts = clip.facts();
        try {
            PngWriter.write(png, facts.uprightWidth(), facts.uprightHeight(), upright, 4 * facts.uprightWidth());
        } catch (IOException failed) {
            throw new ClipException(
                    Reason.CANNOT_WRITE,
                    png + " could not be written; check that its folder is there, may be written to and has room.");
        }
    }

    /**
     * When a field is shown: the first one with its frame, the second one half-way to the next frame.
     *
     * @return microseconds on the stream's clock
     */
    public static long fieldTimeUs(Clip clip, int frame, Field field) throws ClipException {
        List<IndexedFrame> frames = clip.index().frames();
        long at = frames.get(frame).timeUs();
        Field first;
        try (FrameReader reader = clip.reader(0)) {
            first = reader.firstField(frame);
        }
        if (field == first) {
            return at;
        }
        long end = frame + 1 < frames.size()
                ? frames.get(frame + 1).timeUs()
                : frames.get(0).timeUs() + clip.facts().durationUs().orElse(0);
        return at + Math.max(0, end - at) / 2;
    }

    /** A frame as BGRA, upright and with square pixels: {@code uprightWidth × uprightHeight}, rows packed. */
    public static ByteBuffer upright(Clip clip, FrameReader reader, int frame) throws ClipException {
        return upright(clip, reader, frame, Optional.empty());
    }

    private static ByteBuffer upright(Clip clip, FrameReader reader, int frame, Optional<Field> field)
            throws ClipException {
        ClipFacts facts = clip.facts();
        int width = facts.width();
        int height = facts.height();
        ByteBuffer stored = ByteBuffer.allocateDirect(4 * width * height);
        if (field.isPresent()) {
            reader.readBgra(frame, field.get(), stored, 4 * width);
        } else {
            reader.readBgra(frame, stored, 4 * width);
        }
        int square = Math.max(1, facts.squareWidth());
        ByteBuffer shaped = square == width ? stored : stretch(stored, width, square, height);
        return facts.rotationDegrees() == 0 ? shaped : turn(shaped, square, height, facts.rotationDegrees());
    }

    /** Changes the width only: a triangle filter, as wide as a source or a target pixel, whichever is wider. */
    private static ByteBuffer stretch(ByteBuffer from, int width, int square, int height) {
        ByteBuffer to = ByteBuffer.allocateDirect(4 * square * height);
        double step = (double) width / square;
        double reach = Math.max(1, step);
        for (int x = 0; x < square; x++) {
            double centre = (x + 0.5) * step - 0.5;
            int first = Math.max(0, (int) Math.ceil(centre - reach));
            int last = Math.min(width - 1, (int) Math.floor(centre + reach));
            double[] weights = new double[last - first + 1];
            double sum = 0;
            for (int i = first; i <= last; i++) {
                weights[i - first] = Math.max(0, 1 - Math.abs(i - centre) / reach);
                sum += weights[i - first];
            }
            for (int y = 0; y < height; y++) {
                for (int c = 0; c < 4; c++) {
                    double value = 0;
                    for (int i = first; i <= last; i++) {
                        value += weights[i - first] * (from.get(4 * (y * width + i) + c) & 0xFF);
                    }
                    to.put(4 * (y * square + x) + c, (byte) Math.round(value / sum));
                }
            }
        }
        return to;
    }

    private static ByteBuffer turn(ByteBuffer from, int width, int height, int clockwiseDegrees) {
        ByteBuffer to = ByteBuffer.allocateDirect(4 * width * height);
        int turnedWidth = clockwiseDegrees % 180 == 0 ? width : height;
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                int toX;
                int toY;
                switch (clockwiseDegrees) {
                    case 90 -> {
                        toX = height - 1 - y;
                        toY = x;
                    }
                    case 180 -> {
                        toX = width - 1 - x;
                        toY = height - 1 - y;
                    }
                    default -> {
                        toX = y;
                        toY = width - 1 - x;
                    }
                }
                to.putInt(4 * (toY * turnedWidth + toX), from.getInt(4 * (y * width + x)));
            }
        }
        return to;
    }
}
