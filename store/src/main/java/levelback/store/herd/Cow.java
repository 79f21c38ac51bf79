package levelback.store.herd;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * A cow.
 *
 * @param number her management number in force on the day asked for; text, zeros kept
 * @param calving her last calving
 * @param note what the next person at the chute must know, such as a kick; empty text for nothing
 */
public record Cow(
        CowId id,
        HerdId herd,
        String number,
        Optional<String> name,
        Optional<String> officialId,
        Optional<String> tag,
        Optional<LocalDate> birth,
        Optional<LocalDate> calving,
        OptionalInt parity,
        String note) {
    /** A new cow of whom nothing is known but her number. */
    public static Cow numbered(HerdId herd, String number) {
        return new Cow(
                CowId.fresh(),
                herd,
                number,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                OptionalInt.empty(),
                "");
    }
}
