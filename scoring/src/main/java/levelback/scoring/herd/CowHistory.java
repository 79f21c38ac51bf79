package levelback.scoring.herd;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import levelback.scoring.proof.ScoreRow;

/**
 * The scores of one cow, one a day, oldest first. Several rows of hers on a day (legs, scorers) fold into the highest.
 *
 * <p>Not a record since its arrays are its own; nobody else gets hold of them.
 */
final class CowHistory {

    private final String cow;
    private final long[] days;
    private final double[] scores;

    private CowHistory(String cow, long[] days, double[] scores) {
        this.cow = cow;
        this.days = days;
        this.scores = scores;
    }

    /** All cows by number; the order of the rows plays no part. */
    static List<CowHistory> of(List<ScoreRow> rows) {
        Map<String, List<ScoreRow>> byCow = new TreeMap<>();
        for (ScoreRow row : rows) {
            byCow.computeIfAbsent(row.cow(), c -> new ArrayList<>()).add(row);
        }
        List<CowHistory> histories = new ArrayList<>(byCow.size());
        byCow.forEach((cow, hers) -> histories.add(of(cow, hers)));
        return histories;
    }

    private static CowHistory of(String cow, List<ScoreRow> hers) {
        hers.sort(Comparator.comparing(ScoreRow::date));
        long[] days = new long[hers.size()];
        double[] scores = new double[hers.size()];
        int n = 0;
        for (ScoreRow row : hers) {
            long day = row.date().toEpochDay();
            if (n > 0 && days[n - 1] == day) {
                scores[n - 1] = Math.max(scores[n - 1], row.score());
            } else {
                days[n] = day;
                scores[n] = row.score();
                n++;
            }
        }
        return new CowHistory(cow, java.util.Arrays.copyOf(days, n), java.util.Arrays.copyOf(scores, n));
    }

    String cow() {
        return cow;
    }

    /** Days with a score; at least 1. */
    int size() {
        return days.length;
    }

    /** Day of her score {@code i} since 1970-01-01. */
    long day(int i) {
        return days[i];
    }

    double score(int i) {
        return scores[i];
    }

    boolean lame(int i, double lameCut) {
        return scores[i] >= lameCut;
    }

    /** Whether her score {@code i} has two before it and both of these were sound. */
    boolean afterTwoSound(int i, double lameCut) {
        return i >= 2 && !lame(i - 1, lameCut) && !lame(i - 2, lameCut);
    }
}
