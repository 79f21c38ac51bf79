package levelback.clips.look;

import java.time.Duration;

/**
 * How much a first look at a file may take. Reading counts as alive while packets and pictures go on coming; a file that is
 * merely long is not cut short by {@link #silence}.
 *
 * @param silence longest time without a sign of life
 * @param whole longest time for a file of no size at all
 * @param wholePerGibibyte what each GiB of the file adds to it
 * @param residentBytes most memory that the process may hold
 * @param picturePixels most pixels of one picture, width times height
 */
public record LookLimits(
        Duration silence, Duration whole, Duration wholePerGibibyte, long residentBytes, long picturePixels) {

    /** For a laptop in a shed: 20 s of silence, 2 min and 3 min for each GiB, 2 GiB of memory, 8192 by 8192 pixels. */
    public static final LookLimits USUAL =
            new LookLimits(Duration.ofSeconds(20), Duration.ofMinutes(2), Duration.ofMinutes(3), 2L << 30, 1L << 26);

    public LookLimits {
        if (silence.isNegative() || silence.isZero() || whole.isNegative() || residentBytes < 1 || picturePixels < 1) {
            throw new IllegalArgumentException("a limit must be above nothing");
        }
    }

    Duration wholeFor(long fileBytes) {
        return whole.plusMillis(Math.round(wholePerGibibyte.toMillis() * (fileBytes / (double) (1L << 30))));
    }
}
