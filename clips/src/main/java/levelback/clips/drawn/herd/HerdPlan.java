package levelback.clips.drawn.herd;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.NoSuchElementException;

/**
 * The invented herd over nine visits.
 *
 * @param seed what it was drawn from
 * @param farm name of the invented farm
 * @param zone its time zone
 * @param cows its cows, by number
 * @param visits its visits, oldest first
 * @param lesionsBegun all lesions that began in the fortnights that end on a visit
 */
public record HerdPlan(
        long seed, String farm, ZoneId zone, List<HerdCow> cows, List<HerdVisit> visits, List<HerdOnset> lesionsBegun) {

    /** The day of the last visit: a Tuesday in the past. */
    public static final LocalDate LAST_VISIT = LocalDate.of(2026, 3, 10);

    /** Days from one visit to the next. */
    public static final int DAYS_BETWEEN_VISITS = 14;

    public HerdPlan {
        cows = List.copyOf(cows);
        visits = List.copyOf(visits);
        lesionsBegun = List.copyOf(lesionsBegun);
    }

    /** The herd of the demo: 60 cows, nine visits, the last two with 16 cows filmed. */
    public static HerdPlan of(long seed) {
        return of(seed, 60, 9, 16);
    }

    /**
     * A herd of another size, for tests.
     *
     * @param cows at most 60
     * @param visits at least 2
     * @param filmed cows filmed at each of the last two visits, at most {@code cows}
     */
    public static HerdPlan of(long seed, int cows, int visits, int filmed) {
        return new HerdLife(seed, cows, visits, filmed).live();
    }

    /** The cow with a number. */
    public HerdCow cow(String number) {
        return cows.stream()
                .filter(c -> c.number().equals(number))
                .findFirst()
                .orElseThrow(() -> new NoSuchElementException("no cow " + number));
    }
}
