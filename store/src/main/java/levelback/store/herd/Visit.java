package levelback.store.herd;

import java.time.LocalDate;

/**
 * One herd on one day.
 *
 * @param ordinal 1 for the herd's first visit
 */
public record Visit(VisitId id, HerdId herd, LocalDate date, int ordinal) {}
