package levelback.scoring.gait;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import levelback.scoring.value.Leg;

/**
 * How many feet are on the floor, as fractions of the time from the first LH down not before every leg's first event to
 * the last LH down not after every leg's last event. A leg is on the floor from a down (inclusive) to its up.
 *
 * @param fractions by number of feet, 0 to 4, summing to 1; empty where the record holds no whole LH stride
 * @param why what is missing; present where the fractions are empty
 * @param notes where an event is missing inside the time counted
 */
public record SupportSequence(List<Double> fractions, Optional<String> why, List<String> notes) {

    private static final double ROUNDING_S = 1e-9;

    public SupportSequence {
        fractions = List.copyOf(fractions);
        notes = List.copyOf(notes);
    }

    static SupportSequence of(Walk walk) {
        double first = Double.NEGATIVE_INFINITY;
        double last = Double.POSITIVE_INFINITY;
        for (Leg leg : Leg.values()) {
            int[] events = walk.eventsOf(leg);
            if (events.length == 0) {
                return none(leg + " has no footfalls, so nobody knows how many feet stand");
            }
            first = Math.max(first, walk.time(events[0]));
            last = Math.min(last, walk.time(events[events.length - 1]));
        }
        double from = first - ROUNDING_S;
        double to = last + ROUNDING_S;
        double[] downs = Arrays.stream(walk.downsOf(Leg.LH))
                .mapToDouble(walk::time)
                .filter(t -> t >= from && t <= to)
                .toArray();
        if (downs.length < 2) {
            return none("no whole LH stride in which all four legs are known");
        }
        return counted(walk, downs[0], downs[downs.length - 1]);
    }

    private static SupportSequence counted(Walk walk, double from, double to) {
        List<Footfall> all = new ArrayList<>();
        for (int i = 0; i < walk.size(); i++) {
            all.add(walk.event(i));
        }
        all.sort(Comparator.comparingDouble(Footfall::timeS));
        Map<Leg, Boolean> stands = new EnumMap<>(Leg.class);
        double[] on = new double[5];
        List<String> notes = new ArrayList<>();
        double now = from;
        for (Footfall event : all) {
            double at = Math.min(to, event.timeS());
            if (at > now) {
                int feet = (int) stands.values().stream().filter(s -> s).count();
                on[feet] += at - now;
                now = at;
            }
            if (event.timeS() >= to) {
                break;
            }
            boolean down = event.event() == Footfall.Event.DOWN;
            Boolean before = stands.put(event.leg(), down);
            if (before != null && before == down && event.timeS() > from) {
                notes.add("at " + event.timeS() + " s " + event.leg() + " " + (down ? "comes down" : "goes up")
                        + " twice running: an event is missing before it, and the support counts her foot as "
                        + (down ? "standing" : "in the air") + " in between");
            }
        }
        List<Double> fractions = new ArrayList<>();
        for (double seconds : on) {
            fractions.add(seconds / (to - from));
        }
        return new SupportSequence(fractions, Optional.empty(), notes);
    }

    private static SupportSequence none(String why) {
        return new SupportSequence(List.of(), Optional.of(why), List.of());
    }
}
