package levelback.scoring.gait;

import java.util.Optional;
import java.util.OptionalDouble;
import levelback.scoring.value.Interval;

/**
 * A left and a right mean with their symmetry index 100·|L−R| / (0.5·(L+R)) (Robinson, Herzog and Nigg 1987, formula
 * from memory): 0 is perfect.
 *
 * @param left mean of the left; empty without readings
 * @param right mean of the right
 * @param nLeft readings on the left
 * @param nRight readings on the right
 * @param index the symmetry index; empty where a side is missing or the two sum to nothing
 * @param interval of the index
 * @param method how the interval was made
 * @param why what is missing; present whenever a figure is
 */
public record Symmetry(
        OptionalDouble left,
        OptionalDouble right,
        long nLeft,
        long nRight,
        OptionalDouble index,
        Optional<Interval> interval,
        String method,
        Optional<String> why) {

    /** The symmetry index of two means; empty where they do not sum to something positive. */
    public static OptionalDouble index(double left, double right) {
        double half = 0.5 * (left + right);
        return half > 0 ? OptionalDouble.of(100 * Math.abs(left - right) / half) : OptionalDouble.empty();
    }
}
