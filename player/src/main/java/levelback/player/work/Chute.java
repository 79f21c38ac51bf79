package levelback.player.work;

import java.time.LocalDate;
import levelback.store.herd.CowId;
import levelback.store.herd.PersonId;

/**
 * Whose card it is: a cow, the day she stands in the chute, and who trims.
 *
 * @param cow the cow in the chute
 * @param day the day of the card, by the farm's calendar
 * @param trimmer who writes the card
 */
public record Chute(CowId cow, LocalDate day, PersonId trimmer) {}
