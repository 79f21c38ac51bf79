package levelback.store.herd;

import java.time.LocalDate;
import java.util.Optional;

/**
 * A management number that a cow carries or carried.
 *
 * @param from first day
 * @param until last day, included; empty while she carries it
 */
public record NumberSpan(CowId cow, String number, LocalDate from, Optional<LocalDate> until) {}
