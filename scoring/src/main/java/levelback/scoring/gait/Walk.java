package levelback.scoring.gait;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import levelback.scoring.value.Leg;

/** The footfalls of one pass, leg by leg and in order of time, with the way she walks. */
final class Walk {

    private final List<Footfall> events;
    private final Map<Leg, int[]> byLeg = new EnumMap<>(Leg.class);
    private final Map<Leg, int[]> downs = new EnumMap<>(Leg.class);
    private final int direction;

    /** @param events in any order; their indices here are the indices of every {@link Reading.Part} */
    Walk(List<Footfall> events) {
        this.events = List.copyOf(events);
        Map<Leg, List<Integer>> sorted = new EnumMap<>(Leg.class);
        for (Leg leg : Leg.values()) {
            sorted.put(leg, new ArrayList<>());
        }
        for (int i = 0; i < this.events.size(); i++) {
            sorted.getOrDefault(this.events.get(i).leg(), new ArrayList<>()).add(i);
        }
        sorted.forEach((leg, indices) -> {
            // At one instant the foot leaves the floor before it is set down again.
            indices.sort(Comparator.comparingDouble(
                            (Integer i) -> this.events.get(i).timeS())
                    .thenComparing(
                            i -> this.events.get(i).event(),
                            Comparator.comparing(e -> e == Footfall.Event.UP ? 0 : 1)));
            byLeg.put(leg, indices.stream().mapToInt(Integer::intValue).toArray());
            downs.put(
                    leg,
                    indices.stream()
                            .mapToInt(Integer::intValue)
                            .filter(i -> this.events.get(i).event() == Footfall.Event.DOWN)
                            .toArray());
        });
        this.direction = wayOf();
    }

    /** How many events. */
    int size() {
        return events.size();
    }

    Footfall event(int index) {
        return events.get(index);
    }

    double time(int index) {
        return events.get(index).timeS();
    }

    /** Indices of a leg's events in order of time. */
    int[] eventsOf(Leg leg) {
        return byLeg.getOrDefault(leg, new int[0]).clone();
    }

    /** Indices of a leg's downs in order of time. */
    int[] downsOf(Leg leg) {
        return downs.getOrDefault(leg, new int[0]).clone();
    }

    /** +1 where x grows as she walks, -1 where it falls: a file the other way about is turned round. */
    int direction() {
        return direction;
    }

    /** From one print to another along her way, in metres; empty where either was not measured. */
    OptionalDouble forward(int from, int to) {
        OptionalDouble a = events.get(from).xM();
        OptionalDouble b = events.get(to).xM();
        return a.isPresent() && b.isPresent()
                ? OptionalDouble.of(direction * (b.getAsDouble() - a.getAsDouble()))
                : OptionalDouble.empty();
    }

    /** By the way each hoof went from its first print to its last, over all four. */
    private int wayOf() {
        double gone = 0;
        for (int[] prints : downs.values()) {
            double[] xs = Arrays.stream(prints)
                    .filter(i -> events.get(i).xM().isPresent())
                    .mapToDouble(i -> events.get(i).xM().orElse(0))
                    .toArray();
            if (xs.length > 1) {
                gone += xs[xs.length - 1] - xs[0];
            }
        }
        return gone < 0 ? -1 : 1;
    }
}
