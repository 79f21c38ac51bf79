package levelback.scoring.herd;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import levelback.scoring.proof.ScoreRow;

/**
 * What became of the cows from one visit to the next. Several rows of a cow on a day fold into her highest score.
 *
 * @param from the earlier day
 * @param to the later day
 * @param stillLame lame on both days
 * @param threeOrMore of these, lame at three of their scores running or more, up to the later day
 * @param recovered lame then, sound now
 * @param newlyLame lame now and sound then
 * @param newCases lame now, after two scores that were both sound
 * @param notSeen scored then and not now
 */
public record VisitChange(
        LocalDate from,
        LocalDate to,
        long stillLame,
        long threeOrMore,
        long recovered,
        long newlyLame,
        long newCases,
        long notSeen) {

    /**
     * The change between two days of a herd's scores.
     *
     * @param lameCut a score at or above it is lame
     */
    public static VisitChange between(List<ScoreRow> scores, LocalDate from, LocalDate to, double lameCut) {
        Map<String, TreeMap<LocalDate, Double>> cows = new HashMap<>();
        for (ScoreRow row : scores) {
            cows.computeIfAbsent(row.cow(), c -> new TreeMap<>()).merge(row.date(), row.score(), Math::max);
        }
        long still = 0;
        long three = 0;
        long recovered = 0;
        long newly = 0;
        long cases = 0;
        long notSeen = 0;
        for (TreeMap<LocalDate, Double> cow : cows.values()) {
            Double then = cow.get(from);
            Double now = cow.get(to);
            if (now == null) {
                notSeen += then == null ? 0 : 1;
                continue;
            }
            boolean lameNow = now >= lameCut;
            cases += lameNow && soundTwice(cow.headMap(to, false), lameCut) ? 1 : 0;
            if (then == null) {
                continue;
            }
            boolean lameThen = then >= lameCut;
            if (lameNow && lameThen) {
                still++;
                three += running(cow.headMap(to, true), lameCut) >= 3 ? 1 : 0;
            } else if (lameNow) {
                newly++;
            } else if (lameThen) {
                recovered++;
            }
        }
        return new VisitChange(from, to, still, three, recovered, newly, cases, notSeen);
    }

    private static boolean soundTwice(NavigableMap<LocalDate, Double> earlier, double lameCut) {
        int sound = 0;
        for (double score : earlier.descendingMap().values()) {
            if (score >= lameCut) {
                return false;
            }
            if (++sound == 2) {
                return true;
            }
        }
        return false;
    }

    private static int running(NavigableMap<LocalDate, Double> upTo, double lameCut) {
        int lame = 0;
        for (double score : upTo.descendingMap().values()) {
            if (score < lameCut) {
                break;
            }
            lame++;
        }
        return lame;
    }
}
