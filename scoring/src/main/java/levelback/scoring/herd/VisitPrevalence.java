package levelback.scoring.herd;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.TreeMap;
import levelback.scoring.proof.Proportions;
import levelback.scoring.proof.ScoreRow;
import levelback.scoring.value.Estimate;

/**
 * How many of the cows scored on a day were lame. Several rows of a cow on a day fold into her highest score.
 *
 * @param date day of the visit
 * @param scored cows scored
 * @param lame cows at or above the lame cut
 * @param severe cows at or above the severe cut
 * @param unscored cows of the herd not scored that day; empty where the size of the herd is not known
 * @param prevalence lame over scored, Wilson's interval; with the size of the herd known, that of {@link FinitePopulation}
 */
public record VisitPrevalence(
        LocalDate date, long scored, long lame, long severe, OptionalLong unscored, Estimate prevalence) {

    /**
     * One entry for each day, oldest first.
     *
     * @param lameCut a score at or above it is lame
     * @param severeCut a score at or above it is severely lame
     * @param level confidence level such as 0.95
     */
    public static List<VisitPrevalence> of(List<ScoreRow> scores, double lameCut, double severeCut, double level) {
        return of(scores, lameCut, severeCut, OptionalLong.empty(), level);
    }

    /**
     * One entry for each day of a herd whose size is known, oldest first.
     *
     * @param herdSize cows in the herd; empty where not known
     * @throws IllegalArgumentException if more cows were scored on a day than the herd has
     */
    public static List<VisitPrevalence> of(
            List<ScoreRow> scores, double lameCut, double severeCut, OptionalLong herdSize, double level) {
        TreeMap<LocalDate, Map<String, Double>> days = new TreeMap<>();
        for (ScoreRow row : scores) {
            days.computeIfAbsent(row.date(), d -> new HashMap<>()).merge(row.cow(), row.score(), Math::max);
        }
        List<VisitPrevalence> list = new ArrayList<>();
        days.forEach((date, cows) -> {
            long lame = cows.values().stream().filter(s -> s >= lameCut).count();
            long severe = cows.values().stream().filter(s -> s >= severeCut).count();
            list.add(new VisitPrevalence(
                    date,
                    cows.size(),
                    lame,
                    severe,
                    herdSize.isEmpty() ? herdSize : OptionalLong.of(herdSize.getAsLong() - cows.size()),
                    herdSize.isEmpty()
                            ? Proportions.estimate(lame, cows.size(), level, "no cow was scored")
                            : FinitePopulation.share(lame, cows.size(), herdSize.getAsLong(), level)));
        });
        return list;
    }
}
