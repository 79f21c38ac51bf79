package levelback.clips.open;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import levelback.scoring.value.TimeBase;

/**
 * What a recording is.
 *
 * @param file the file
 * @param container container format, FFmpeg's name
 * @param codec codec, FFmpeg's name
 * @param width stored width in pixels
 * @param height stored height in pixels
 * @param pixelFormat stored pixel format, FFmpeg's name
 * @param rotationDegrees clockwise turn that shows it upright: 0, 90, 180 or 270
 * @param timeBase the stream's clock
 * @param frameCount pictures that come out
 * @param startUs time of frame 0 in microseconds
 * @param durationUs from frame 0 to the end of the last frame, in microseconds
 * @param averageFrameRate frames per second, averaged
 * @param constantFrameRate whether all frames are equally far apart
 * @param interlaced whether the stream is marked as interlaced
 * @param sampleAspectRatio width of a pixel divided by its height, such as {@code "1:1"}
 * @param recordedAt when the camera says it was made
 * @param damage spans that cannot be trusted; empty where the whole is readable
 * @param fingerprint length and SHA-256 of the first, middle and last MiB
 */
public record ClipFacts(
        Path file,
        String container,
        String codec,
        int width,
        int height,
        String pixelFormat,
        int rotationDegrees,
        TimeBase timeBase,
        int frameCount,
        OptionalLong startUs,
        OptionalLong durationUs,
        double averageFrameRate,
        boolean constantFrameRate,
        boolean interlaced,
        String sampleAspectRatio,
        Optional<Instant> recordedAt,
        List<Damage> damage,
        String fingerprint) {

    /**
     * A span that cannot be trusted.
     *
     * @param what what is wrong, for a person
     * @param fromUs first microsecond of it
     * @param toUs end of it
     * @param leaning whether it only follows from damage that is named beside it, such as pictures made from damaged ones
     */
    public record Damage(String what, long fromUs, long toUs, boolean leaning) {

        /** Of pictures that are damaged or missing themselves. */
        public Damage(String what, long fromUs, long toUs) {
            this(what, fromUs, toUs, false);
        }
    }

    public ClipFacts {
        damage = List.copyOf(damage);
    }

    /** Width of the upright picture in square pixels (pixel shape and rotation applied). */
    public int uprightWidth() {
        return rotationDegrees % 180 == 0 ? squareWidth() : height;
    }

    /** Height of the upright picture in square pixels. */
    public int uprightHeight() {
        return rotationDegrees % 180 == 0 ? height : squareWidth();
    }

    /** Stored width made good for the pixel shape. */
    public int squareWidth() {
        String[] parts = sampleAspectRatio.split(":", 2);
        double shape = Double.parseDouble(parts[0]) / Double.parseDouble(parts[1]);
        return (int) Math.round(width * shape);
    }
}
