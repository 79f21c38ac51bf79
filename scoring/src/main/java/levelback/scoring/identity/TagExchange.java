package levelback.scoring.identity;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * How likely two neighbouring readings stand in the list with their tags exchanged, estimated from the repeats.
 *
 * <p>No time can show an exchange between two cows that were read once each: both times fit their passes, and both tags
 * are wrong. Repeats show it. A burst is short; where a tag's burst is torn apart by its neighbour's reading and putting
 * the two readings back makes it short again, they were exchanged, and are put back before repeats are collapsed. With D torn of n neighbouring pairs that hold a
 * repeat, the chance is (0.03 + D) / (20 + n): a weak prior, so that a list without repeats is taken as it
 * stands. It is then laid over every pair that cannot tell: with the posterior P(i, j) of the matchings for pass i and
 * read j,
 *
 * <pre>P'(i, j) = P(i, j)·(1 - x(j-1) - x(j)) + P(i, j-1)·x(j-1) + P(i, j+1)·x(j)</pre>
 *
 * where x(j) is the chance for reads j and j+1: 0 where a repeat shows that they stand right, ½ where the burst of the
 * earlier is torn such that the two first readings were exchanged, else the estimate. Rows still sum to 1. Common sense,
 * no source; held by the simulation ({@code IdentityBench}).
 */
final class TagExchange {

    private static final double PRIOR_TORN = 0.03;
    private static final double PRIOR_PAIRS = 20;
    /** Where there are too few repeats to say how long a pause within a burst may be. */
    private static final double USUAL_PAUSE_S = 2;

    private static final int FEWEST_PAUSES = 8;
    /** Neighbours in the list this far apart are not exchanged. */
    private static final double APART_S = 30;

    /**
     * Readings with those put back that their bursts show to be exchanged, and how many pairs that were.
     *
     * @param reads in order of time
     */
    record PutBack(List<TagVisit.Read> reads, int pairs) {}

    private enum Kind {
        RIGHT,
        TORN,
        FIRSTS_EXCHANGED,
        SILENT
    }

    private final double rate;
    private final double[] between;

    private TagExchange(double rate, double[] between) {
        this.rate = rate;
        this.between = between;
    }

    /**
     * Puts back what bursts show to be exchanged, before repeats are collapsed. Nothing is touched where tags come again
     * after a pause without that as often: there cows linger at the gate.
     */
    static PutBack putBack(List<TagVisit.Read> reads) {
        List<TagVisit> visits = TagVisit.of(reads);
        double pause = longestPauseS(visits);
        Map<TagVisit.Read, String> tags = new HashMap<>();
        int torn = 0;
        int pauses = 0;
        for (TagVisit visit : visits) {
            for (int r = 1; r < visit.timesS().size(); r++) {
                pauses += visit.timesS().get(r) - visit.timesS().get(r - 1) > pause ? 1 : 0;
            }
        }
        for (int k = 0; k + 1 < visits.size(); k++) {
            TagVisit one = visits.get(k);
            TagVisit two = visits.get(k + 1);
            Kind kind = kind(one, two, pause);
            if (kind == Kind.TORN
                    || (kind == Kind.FIRSTS_EXCHANGED && two.timesS().size() == 1)) {
                double second = two.firstS();
                double with = kind == Kind.TORN
                        ? one.timesS().stream()
                                .filter(t -> t > second)
                                .findFirst()
                                .orElse(second)
                        : one.firstS();
                boolean fits = kind == Kind.FIRSTS_EXCHANGED
                        || two.timesS().size() == 1
                        || two.timesS().get(1) >= with;
                if (fits) {
                    torn++;
                    tags.put(new TagVisit.Read(two.tag(), second), one.tag());
                    tags.put(new TagVisit.Read(one.tag(), with), two.tag());
                }
            }
        }
        if (torn == 0 || pauses > 2 * torn) {
            return new PutBack(reads, 0);
        }
        return new PutBack(
                reads.stream()
                        .map(r -> new TagVisit.Read(tags.getOrDefault(r, r.tag()), r.timeS()))
                        .toList(),
                torn);
    }

    /**
     * From visits in order of their first reading.
     *
     * @param putBack how many pairs were found exchanged and put back before
     */
    static TagExchange of(List<TagVisit> visits, int putBack) {
        double[] between = new double[Math.max(0, visits.size() - 1)];
        Kind[] kinds = new Kind[between.length];
        double pause = longestPauseS(visits);
        int torn = putBack;
        int telling = 0;
        for (int k = 0; k < between.length; k++) {
            kinds[k] = kind(visits.get(k), visits.get(k + 1), pause);
            telling += kinds[k] == Kind.SILENT ? 0 : 1;
            torn += kinds[k] == Kind.TORN || kinds[k] == Kind.FIRSTS_EXCHANGED ? 1 : 0;
        }
        double rate = Math.min(0.25, (PRIOR_TORN + torn) / (PRIOR_PAIRS + telling));
        for (int k = 0; k < between.length; k++) {
            boolean near = visits.get(k + 1).firstS() - visits.get(k).firstS() <= APART_S;
            between[k] = switch (kinds[k]) {
                case RIGHT, TORN -> 0;
                case FIRSTS_EXCHANGED -> 0.5;
                case SILENT -> near ? rate : 0;
            };
        }
        return new TagExchange(rate, between);
    }

    /** Chance that two neighbouring readings are exchanged. */
    double rate() {
        return rate;
    }

    /** Probability that the read of a tag visit belongs to a pass, exchanges allowed for. */
    double probability(Alignment alignment, int pass, int read) {
        double before = read > 0 ? between[read - 1] : 0;
        double after = read < between.length ? between[read] : 0;
        double p = alignment.probability(pass, read) * Math.max(0, 1 - before - after);
        if (before > 0) {
            p += alignment.probability(pass, read - 1) * before;
        }
        if (after > 0) {
            p += alignment.probability(pass, read + 1) * after;
        }
        return p;
    }

    private static Kind kind(TagVisit one, TagVisit two, double pause) {
        if (one.timesS().size() == 1 && two.timesS().size() == 1) {
            return Kind.SILENT;
        }
        double second = two.firstS();
        if (one.lastS() <= second) {
            return Kind.RIGHT;
        }
        double last = one.firstS();
        double next = one.lastS();
        for (double time : one.timesS()) {
            if (time <= second) {
                last = Math.max(last, time);
            } else {
                next = Math.min(next, time);
            }
        }
        if (next - last <= pause) {
            return Kind.RIGHT;
        }
        if (next - second <= pause && last == one.firstS()) {
            return Kind.FIRSTS_EXCHANGED;
        }
        return second - last <= pause ? Kind.TORN : Kind.RIGHT;
    }

    /** Half as long again as nine in ten pauses within bursts that no other tag interrupts. */
    private static double longestPauseS(List<TagVisit> visits) {
        List<Double> pauses = new ArrayList<>();
        for (int k = 0; k < visits.size(); k++) {
            TagVisit visit = visits.get(k);
            boolean whole =
                    k + 1 == visits.size() || visit.lastS() < visits.get(k + 1).firstS();
            for (int r = 1; whole && r < visit.timesS().size(); r++) {
                pauses.add(visit.timesS().get(r) - visit.timesS().get(r - 1));
            }
        }
        if (pauses.size() < FEWEST_PAUSES) {
            return USUAL_PAUSE_S;
        }
        Collections.sort(pauses);
        return 1.5 * pauses.get((int) (0.9 * (pauses.size() - 1)));
    }
}
