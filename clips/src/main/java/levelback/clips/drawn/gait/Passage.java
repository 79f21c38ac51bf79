package levelback.clips.drawn.gait;

import java.util.ArrayList;
import java.util.List;

/**
 * How walking time runs against real time: at one to one in an even walk, held in a stop, backwards in backing. Real time
 * counts from the instant she enters.
 */
final class Passage {
    /**
     * A stretch in which the pace changes from one rate to another by half a cosine; a rate never changes sign within.
     *
     * @param fromS real time at its begin
     * @param lengthS real time it takes
     * @param walkS walking time at its begin
     * @param hold whether she stands on four feet in it
     */
    record Stretch(double fromS, double lengthS, double walkS, double rate0, double rate1, boolean hold) {
        double walkAt(double timeS) {
            if (rate0 == rate1) {
                return walkS + rate0 * (timeS - fromS);
            }
            double u = Math.min(1, (timeS - fromS) / lengthS);
            return walkS + lengthS * (rate0 * u + (rate1 - rate0) * (u / 2 - Math.sin(Math.PI * u) / (2 * Math.PI)));
        }

        double endS() {
            return fromS + lengthS;
        }
    }

    private static final double FOR_EVER_S = 1e4;
    private final List<Stretch> stretches = new ArrayList<>();
    private double timeS = -FOR_EVER_S;
    private double walkS = -FOR_EVER_S;

    /** Walks on evenly until walking time reaches a value; nothing if it has. */
    void walkUntil(double walkUntilS) {
        if (walkUntilS > walkS) {
            add(walkUntilS - walkS, 1, 1, false);
        }
    }

    void add(double lengthS, double rate0, double rate1, boolean hold) {
        Stretch next = new Stretch(timeS, lengthS, walkS, rate0, rate1, hold);
        stretches.add(next);
        timeS += lengthS;
        walkS = next.walkAt(timeS);
    }

    void walkOnForEver() {
        add(2 * FOR_EVER_S, 1, 1, false);
    }

    void backForEver(double rate) {
        add(FOR_EVER_S, -rate, -rate, false);
    }

    double walkS() {
        return walkS;
    }

    double timeS() {
        return timeS;
    }

    List<Stretch> stretches() {
        return stretches;
    }

    Stretch at(double realS) {
        for (Stretch stretch : stretches) {
            if (realS < stretch.endS()) {
                return stretch;
            }
        }
        return stretches.get(stretches.size() - 1);
    }
}
