package levelback.scoring.gait;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The measures of a stride as readings of its events. */
final class StrideReadings {

    private StrideReadings() {}

    static Reading strideTime(Walk walk, StrideSpan s) {
        return between(walk, s.down(), s.next(), walk.time(s.down()));
    }

    static Optional<Reading> stanceTime(Walk walk, StrideSpan s) {
        return s.up().isEmpty()
                ? Optional.empty()
                : Optional.of(between(walk, s.down(), s.up().getAsInt(), walk.time(s.down())));
    }

    static Optional<Reading> swingTime(Walk walk, StrideSpan s) {
        return s.up().isEmpty()
                ? Optional.empty()
                : Optional.of(between(walk, s.up().getAsInt(), s.next(), walk.time(s.down())));
    }

    /** b = stance/stride, with the derivatives (b-1)/T by the down, 1/T by the up, -b/T by the next down. */
    static Optional<Reading> dutyFactor(Walk walk, StrideSpan s) {
        if (s.up().isEmpty()) {
            return Optional.empty();
        }
        int up = s.up().getAsInt();
        double time = s.timeS(walk);
        double duty = (walk.time(up) - walk.time(s.down())) / time;
        return Optional.of(new Reading(
                duty,
                walk.time(s.down()),
                List.of(
                        new Reading.Part(s.down(), (duty - 1) / time, 0),
                        new Reading.Part(up, 1 / time, 0),
                        new Reading.Part(s.next(), -duty / time, 0))));
    }

    static Optional<Reading> length(Walk walk, StrideSpan s) {
        return forward(walk, s.down(), s.next(), walk.time(s.down()));
    }

    /** v = L/T, with the derivatives of both. */
    static Optional<Reading> speed(Walk walk, StrideSpan s) {
        OptionalDouble length = walk.forward(s.down(), s.next());
        if (length.isEmpty()) {
            return Optional.empty();
        }
        double time = s.timeS(walk);
        double speed = length.getAsDouble() / time;
        return Optional.of(new Reading(
                speed,
                walk.time(s.down()),
                List.of(
                        new Reading.Part(s.down(), speed / time, -walk.direction() / time),
                        new Reading.Part(s.next(), -speed / time, walk.direction() / time))));
    }

    /** The time between two events. */
    static Reading between(Walk walk, int from, int to, double atS) {
        return new Reading(
                walk.time(to) - walk.time(from),
                atS,
                List.of(new Reading.Part(from, -1, 0), new Reading.Part(to, 1, 0)));
    }

    /** The way between two prints along her walk; empty where either was not measured. */
    static Optional<Reading> forward(Walk walk, int from, int to, double atS) {
        OptionalDouble way = walk.forward(from, to);
        return way.isEmpty()
                ? Optional.empty()
                : Optional.of(new Reading(
                        way.getAsDouble(),
                        atS,
                        List.of(
                                new Reading.Part(from, 0, -walk.direction()),
                                new Reading.Part(to, 0, walk.direction()))));
    }

    /** Collects what is there. */
    static List<Reading> present(
            List<StrideSpan> spans, java.util.function.Function<StrideSpan, Optional<Reading>> of) {
        List<Reading> readings = new ArrayList<>();
        for (StrideSpan span : spans) {
            of.apply(span).ifPresent(readings::add);
        }
        return readings;
    }
}
