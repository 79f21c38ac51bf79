package levelback.player.work;

import java.time.ZoneId;
import java.util.Optional;

/**
 * How tables are to be taken into a book.
 *
 * @param herd which herd; made where it is not there; empty for the book's only one
 * @param scale gait scale of scores whose table does not name one
 * @param scorer who scored or trimmed where the table does not say
 * @param zone the farm's time zone, for a herd that is made
 * @param mapping how the tables are written
 * @param skipBad whether the good rows are taken although others are bad
 */
public record ImportOrder(
        Optional<String> herd,
        Optional<String> scale,
        Optional<String> scorer,
        Optional<ZoneId> zone,
        TableMapping mapping,
        boolean skipBad) {

    /** Nothing said. */
    public static final ImportOrder PLAIN = new ImportOrder(
            Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), TableMapping.NONE, false);
}
