package levelback.scoring.gait;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import levelback.scoring.value.Leg;
import org.apache.commons.statistics.descriptive.Median;

/**
 * A stride as the events it lies between.
 *
 * @param leg whose
 * @param down index of its first down
 * @param up index of the lift-off in between; empty where it was not seen
 * @param next index of the next down
 */
record StrideSpan(Leg leg, int down, OptionalInt up, int next) {

    /** An interval longer than this many times the leg's median is no stride: a footfall is missing in it. */
    static final double BROKEN = 1.6;

    /**
     * The strides of a pass.
     *
     * @param whole by leg, in order of time
     * @param broken intervals that are no strides, by leg, in order of time
     */
    record Found(Map<Leg, List<StrideSpan>> whole, Map<Leg, List<StrideSpan>> broken) {

        List<StrideSpan> of(Leg leg) {
            return whole.getOrDefault(leg, List.of());
        }

        List<StrideSpan> all() {
            return whole.values().stream().flatMap(List::stream).toList();
        }

        int brokenCount() {
            return broken.values().stream().mapToInt(List::size).sum();
        }
    }

    /** Two successive downs of one leg, but for intervals over 1.6 times the leg's median. */
    static Found find(Walk walk) {
        Map<Leg, List<StrideSpan>> whole = new EnumMap<>(Leg.class);
        Map<Leg, List<StrideSpan>> broken = new EnumMap<>(Leg.class);
        for (Leg leg : Leg.values()) {
            List<StrideSpan> intervals = intervals(walk, leg);
            double limit = BROKEN * medianTime(walk, intervals);
            whole.put(
                    leg, intervals.stream().filter(s -> s.timeS(walk) <= limit).toList());
            broken.put(
                    leg, intervals.stream().filter(s -> s.timeS(walk) > limit).toList());
        }
        return new Found(whole, broken);
    }

    /** Down to down, in seconds. */
    double timeS(Walk walk) {
        return walk.time(next) - walk.time(down);
    }

    /** Median of the intervals in seconds; not a number where there is none. */
    static double medianTime(Walk walk, List<StrideSpan> spans) {
        return spans.isEmpty()
                ? Double.NaN
                : Median.withDefaults()
                        .evaluate(spans.stream().mapToDouble(s -> s.timeS(walk)).toArray());
    }

    private static List<StrideSpan> intervals(Walk walk, Leg leg) {
        List<StrideSpan> spans = new ArrayList<>();
        int down = -1;
        OptionalInt up = OptionalInt.empty();
        for (int index : walk.eventsOf(leg)) {
            if (walk.event(index).event() == Footfall.Event.UP) {
                if (up.isEmpty()) {
                    up = OptionalInt.of(index);
                }
                continue;
            }
            if (down >= 0) {
                spans.add(new StrideSpan(leg, down, up, index));
            }
            down = index;
            up = OptionalInt.empty();
        }
        return spans;
    }
}
