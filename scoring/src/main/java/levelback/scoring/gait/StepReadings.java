package levelback.scoring.gait;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import levelback.scoring.value.Leg;

/**
 * Steps of a leg and the tracking-up of a side.
 *
 * <p>A step: the partner's down to this leg's down, with no other down of the two in between; as length, print to print.
 * One that lasts longer than the pair's median stride is none: a footfall is missing in it, or she stood.
 */
final class StepReadings {

    private static final double FOLLOWS_AT_LEAST = 0.4;
    private static final double FOLLOWS_AT_MOST = 1.1;
    private static final double ROUNDING_S = 1e-9;

    private final Walk walk;
    private final StrideSpan.Found strides;

    StepReadings(Walk walk, StrideSpan.Found strides) {
        this.walk = walk;
        this.strides = strides;
    }

    /** Step times of a leg. */
    List<Reading> times(Leg leg) {
        return pairs(leg).stream()
                .map(p -> StrideReadings.between(walk, p[0], p[1], walk.time(p[1])))
                .toList();
    }

    /** Step lengths of a leg, where both prints were measured. */
    List<Reading> lengths(Leg leg) {
        return pairs(leg).stream()
                .map(p -> StrideReadings.forward(walk, p[0], p[1], walk.time(p[1])))
                .flatMap(Optional::stream)
                .toList();
    }

    private List<int[]> pairs(Leg leg) {
        int[] mine = walk.downsOf(leg);
        int[] theirs = walk.downsOf(leg.partner());
        double longest = StrideSpan.medianTime(
                walk,
                Stream.concat(strides.of(leg).stream(), strides.of(leg.partner()).stream())
                        .toList());
        List<int[]> pairs = new ArrayList<>();
        int before = -1;
        for (int i = 0; i < mine.length; i++) {
            double at = walk.time(mine[i]);
            while (before + 1 < theirs.length && walk.time(theirs[before + 1]) < at) {
                before++;
            }
            boolean alternates = before >= 0 && (i == 0 || walk.time(theirs[before]) >= walk.time(mine[i - 1]));
            // No stride at all to hold it against: the step stands.
            if (alternates && !(at - walk.time(theirs[before]) > longest)) {
                pairs.add(new int[] {theirs[before], mine[i]});
            }
        }
        return pairs;
    }

    /**
     * x of each hind print minus x of the print that it follows: the latest of the fore foot of its side set down 0.4 to
     * 1.1 strides before it. A stride here is the mean stride time of the pass.
     */
    List<Reading> trackingUp(Leg hind, double strideTimeS) {
        int[] fore = walk.downsOf(hind.sameSide());
        double[] times = Arrays.stream(fore).mapToDouble(walk::time).toArray();
        List<Reading> readings = new ArrayList<>();
        for (int print : walk.downsOf(hind)) {
            double latest = walk.time(print) - FOLLOWS_AT_LEAST * strideTimeS + ROUNDING_S;
            double earliest = walk.time(print) - FOLLOWS_AT_MOST * strideTimeS - ROUNDING_S;
            int found = Arrays.binarySearch(times, latest);
            int last = found >= 0 ? found : -found - 2;
            if (last >= 0 && times[last] >= earliest) {
                StrideReadings.forward(walk, fore[last], print, walk.time(print))
                        .ifPresent(readings::add);
            }
        }
        return readings;
    }
}
