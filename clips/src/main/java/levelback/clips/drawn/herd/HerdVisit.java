package levelback.clips.drawn.herd;

import java.time.LocalDate;
import java.util.List;

/**
 * One visit.
 *
 * @param ordinal 1 to 9
 * @param date the day
 * @param states how every cow truly is, in the order of the cows
 * @param scores what both scorers wrote
 * @param lifts who was lifted after it, by day
 * @param filmed numbers of the cows filmed, in the order they walk past; empty for a visit without film
 */
public record HerdVisit(
        int ordinal,
        LocalDate date,
        List<HerdState> states,
        List<HerdScore> scores,
        List<HerdLift> lifts,
        List<String> filmed) {
    public HerdVisit {
        states = List.copyOf(states);
        scores = List.copyOf(scores);
        lifts = List.copyOf(lifts);
        filmed = List.copyOf(filmed);
    }
}
