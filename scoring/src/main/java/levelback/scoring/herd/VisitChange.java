package levelback.scoring.herd;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import java.util.TreeSet;
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
 * @param stillSound sound on both days
 * @param notSeen scored then and not now
 * @param notSeenBefore scored now and not then
 */
public record VisitChange(
        LocalDate from,
        LocalDate to,
        long stillLame,
        long threeOrMore,
        long recovered,
        long newlyLame,
        long newCases,
        long stillSound,
        long notSeen,
        long notSeenBefore) {

    private static final int STILL = 0;
    private static final int THREE = 1;
    private static final int RECOVERED = 2;
    private static final int NEWLY = 3;
    private static final int CASES = 4;
    private static final int SOUND = 5;
    private static final int NOT_SEEN = 6;
    private static final int NOT_SEEN_BEFORE = 7;

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
        long sound = 0;
        long notSeen = 0;
        long notSeenBefore = 0;
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
                notSeenBefore++;
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
            } else {
                sound++;
            }
        }
        return new VisitChange(from, to, still, three, recovered, newly, cases, sound, notSeen, notSeenBefore);
    }

    /** The changes from each day with a score to the next, oldest first, in one look at every cow. */
    static List<VisitChange> all(List<CowHistory> herd, double lameCut) {
        TreeSet<Long> seen = new TreeSet<>();
        for (CowHistory cow : herd) {
            for (int i = 0; i < cow.size(); i++) {
                seen.add(cow.day(i));
            }
        }
        long[] days = seen.stream().mapToLong(Long::longValue).toArray();
        long[][] counts = new long[Math.max(0, days.length - 1)][8];
        for (CowHistory cow : herd) {
            count(cow, lameCut, days, counts);
        }
        List<VisitChange> changes = new ArrayList<>();
        for (int v = 0; v < counts.length; v++) {
            long[] c = counts[v];
            changes.add(new VisitChange(
                    LocalDate.ofEpochDay(days[v]),
                    LocalDate.ofEpochDay(days[v + 1]),
                    c[STILL],
                    c[THREE],
                    c[RECOVERED],
                    c[NEWLY],
                    c[CASES],
                    c[SOUND],
                    c[NOT_SEEN],
                    c[NOT_SEEN_BEFORE]));
        }
        return changes;
    }

    private static void count(CowHistory cow, double lameCut, long[] days, long[][] counts) {
        int before = -2;
        int running = 0;
        for (int i = 0; i < cow.size(); i++) {
            int visit = Arrays.binarySearch(days, cow.day(i));
            boolean lame = cow.lame(i, lameCut);
            running = lame ? running + 1 : 0;
            if (before >= 0 && before != visit - 1) {
                counts[before][NOT_SEEN]++;
            }
            if (visit > 0) {
                long[] c = counts[visit - 1];
                c[CASES] += lame && cow.afterTwoSound(i, lameCut) ? 1 : 0;
                if (before != visit - 1) {
                    c[NOT_SEEN_BEFORE]++;
                } else if (cow.lame(i - 1, lameCut)) {
                    c[lame ? STILL : RECOVERED]++;
                    c[THREE] += running >= 3 ? 1 : 0;
                } else {
                    c[lame ? NEWLY : SOUND]++;
                }
            }
            before = visit;
        }
        if (before < counts.length) {
            counts[before][NOT_SEEN]++;
        }
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
