package levelback.scoring.gait;

import java.util.Arrays;
import java.util.Comparator;
import levelback.scoring.value.Leg;

/**
 * Tells which round of the legs a reading belongs to. The four legs' strides of one round overlap in time and share the
 * pace, so they are one observation of how she varies, not four.
 */
final class Rounds {

    private final double[] begins;

    /** Rounds begin with the downs of the leg that has most of them; the earlier one where two have as many. */
    Rounds(Walk walk) {
        Leg leader = Arrays.stream(Leg.values())
                .max(Comparator.<Leg>comparingInt(leg -> walk.downsOf(leg).length)
                        .thenComparing(
                                leg -> walk.downsOf(leg).length == 0 ? 0 : walk.time(walk.downsOf(leg)[0]),
                                Comparator.reverseOrder()))
                .orElseThrow();
        begins = Arrays.stream(walk.downsOf(leader)).mapToDouble(walk::time).toArray();
    }

    /** The round that was on at a time, from -1 for before the first. */
    int at(double timeS) {
        int found = Arrays.binarySearch(begins, timeS);
        return found >= 0 ? found : -found - 2;
    }
}
