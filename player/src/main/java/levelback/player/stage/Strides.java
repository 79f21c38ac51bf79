package levelback.player.stage;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import levelback.scoring.value.Leg;

/** Strides and ghosts from footfalls: a stride runs from one strike of a leg to the next strike of the same leg. */
public final class Strides {

    private Strides() {}

    /**
     * One stride.
     *
     * @param fromUs the leg's strike
     * @param toUs its next strike
     */
    public record Stride(long fromUs, long toUs) {}

    /** The strides of a leg, in time. */
    public static List<Stride> of(List<Stance> stances, Leg leg) {
        List<Stance> own = own(stances, leg);
        List<Stride> strides = new ArrayList<>();
        for (int i = 1; i < own.size(); i++) {
            strides.add(new Stride(own.get(i - 1).downUs(), own.get(i).downUs()));
        }
        return List.copyOf(strides);
    }

    /** The stride of a leg at a moment; before the first the first, after the last the last. */
    public static Optional<Stride> at(List<Stance> stances, Leg leg, long timeUs) {
        List<Stride> strides = of(stances, leg);
        if (strides.isEmpty()) {
            return Optional.empty();
        }
        return strides.stream()
                .filter(s -> s.fromUs() <= timeUs && timeUs < s.toUs())
                .findFirst()
                .or(() -> Optional.of(
                        timeUs < strides.get(0).fromUs() ? strides.get(0) : strides.get(strides.size() - 1)));
    }

    /**
     * How long the partner leg stood about then: the length of its stance that begins nearest to half a stride away from
     * this one. Laid behind this stance, a short stance shows as a gap.
     */
    public static Optional<Long> ghostUs(List<Stance> stances, Stance stance) {
        return own(stances, stance.leg().partner()).stream()
                .min(Comparator.comparingLong(other -> Math.abs(middle(other) - middle(stance))))
                .map(Stance::lengthUs);
    }

    private static long middle(Stance stance) {
        return (stance.downUs() + stance.upUs()) / 2;
    }

    private static List<Stance> own(List<Stance> stances, Leg leg) {
        return stances.stream()
                .filter(s -> s.leg() == leg)
                .sorted(Comparator.comparingLong(Stance::downUs))
                .toList();
    }
}
