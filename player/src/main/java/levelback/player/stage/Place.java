package levelback.player.stage;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A place in a recording as a person types it. */
public sealed interface Place {

    /**
     * A frame counted as the page counts: {@code 153}.
     *
     * @param number as shown on the page
     */
    record Frame(int number) implements Place {}

    /**
     * A frame by its own number in the recording: {@code #4711}.
     *
     * @param number from 0
     */
    record OwnFrame(int number) implements Place {}

    /**
     * A time as the page counts it: {@code 3.06 s}, {@code 3,06} or {@code 1:03.06}.
     *
     * @param us microseconds
     */
    record Time(long us) implements Place {}

    /** What was typed; empty where it is no place. */
    static Optional<Place> typed(String text) {
        String plain = text.strip();
        Matcher frame = Typed.FRAME.matcher(plain);
        if (frame.matches()) {
            int number = Integer.parseInt(frame.group(2));
            return Optional.of(frame.group(1).isEmpty() ? new Frame(number) : new OwnFrame(number));
        }
        Matcher time = Typed.TIME.matcher(plain);
        boolean sure = plain.endsWith("s") || plain.contains(":") || plain.contains(".") || plain.contains(",");
        if (!time.matches() || !sure) {
            return Optional.empty();
        }
        double seconds = Double.parseDouble(time.group(3).replace(',', '.'));
        long minutes = time.group(2) == null ? 0 : Long.parseLong(time.group(2));
        long hours = time.group(1) == null ? 0 : Long.parseLong(time.group(1));
        return Optional.of(new Time(Math.round(((hours * 60 + minutes) * 60 + seconds) * Typed.MICROS)));
    }

    /** How places are written. */
    final class Typed {
        private static final double MICROS = 1e6;
        private static final Pattern FRAME = Pattern.compile("(#?)\\s*(\\d{1,9})");
        private static final Pattern TIME =
                Pattern.compile("(?:(?:(\\d{1,3}):)?(\\d{1,6}):)?(\\d{1,7}(?:[.,]\\d{0,6})?)\\s*s?");

        private Typed() {}
    }
}
