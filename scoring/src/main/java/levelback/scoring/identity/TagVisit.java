package levelback.scoring.identity;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * One coming of a tag to the gate: all its readings that follow each other within {@value #REPEAT_S} s, collapsed to the
 * first. A tag read again after a longer pause has come again: its cow walked past twice, or two cows carry it.
 *
 * @param tag what was read
 * @param timesS its readings in seconds of the reader's clock, ascending; the first is the time of the visit
 */
record TagVisit(String tag, List<Double> timesS) {

    /** Two readings of a tag further apart than this belong to two visits. */
    static final double REPEAT_S = 60;

    TagVisit {
        timesS = List.copyOf(timesS);
    }

    /** A reading with its time in seconds. */
    record Read(String tag, double timeS) {}

    double firstS() {
        return timesS.get(0);
    }

    double lastS() {
        return timesS.get(timesS.size() - 1);
    }

    /** Visits in order of their first reading; equal times in order of tag. */
    static List<TagVisit> of(List<Read> reads) {
        Map<String, List<Double>> ofTag = new LinkedHashMap<>();
        reads.stream()
                .sorted(Comparator.comparingDouble(Read::timeS))
                .forEach(r ->
                        ofTag.computeIfAbsent(r.tag(), t -> new ArrayList<>()).add(r.timeS()));
        List<TagVisit> visits = new ArrayList<>();
        ofTag.forEach((tag, times) -> {
            int from = 0;
            for (int k = 1; k <= times.size(); k++) {
                if (k == times.size() || times.get(k) - times.get(k - 1) > REPEAT_S) {
                    visits.add(new TagVisit(tag, times.subList(from, k)));
                    from = k;
                }
            }
        });
        visits.sort(Comparator.comparingDouble(TagVisit::firstS).thenComparing(TagVisit::tag));
        return visits;
    }
}
