package levelback.scoring.identity;

import java.util.Arrays;
import java.util.Comparator;
import java.util.stream.IntStream;

/**
 * Which passes are settled without a person: the likeliest first, as long as each has at least
 * {@value #LEAST} and the wrong ones to be expected among them (the sum of 1 - probability) stay within
 * {@value #WRONG} of their number. The rest wait for the person.
 *
 * <p>One threshold alone would not do: of 100 passes called 0.95 five are wrong, and nobody looks at them again.
 */
final class CommitRule {

    /** A pass called less is never settled by the program. */
    static final double LEAST = 0.9;
    /** Share of settled passes that may be expected wrong. */
    static final double WRONG = 0.0075;

    private CommitRule() {}

    /** For each probability whether its pass is settled; passes of equal probability share one fate. */
    static boolean[] settled(double[] probability) {
        int[] order = IntStream.range(0, probability.length)
                .boxed()
                .sorted(Comparator.comparingDouble(i -> -probability[i]))
                .mapToInt(Integer::intValue)
                .toArray();
        boolean[] settled = new boolean[probability.length];
        double wrong = 0;
        int end = 0;
        for (int k = 0; k < order.length; k++) {
            wrong += 1 - probability[order[k]];
            boolean last = k + 1 == order.length || probability[order[k + 1]] < probability[order[k]];
            // The mean of what is doubted only rises from here on, so the last that holds ends the list.
            if (last && probability[order[k]] >= LEAST && wrong <= WRONG * (k + 1)) {
                end = k + 1;
            }
        }
        for (int k = 0; k < end; k++) {
            settled[order[k]] = true;
        }
        return settled;
    }

    /** The lowest probability among the settled; 1 where none is. */
    static double threshold(double[] probability, boolean[] settled) {
        return Arrays.stream(IntStream.range(0, settled.length)
                        .filter(i -> settled[i])
                        .mapToDouble(i -> probability[i])
                        .toArray())
                .min()
                .orElse(1);
    }
}
