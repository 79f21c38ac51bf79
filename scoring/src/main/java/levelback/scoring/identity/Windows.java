package levelback.scoring.identity;

import java.util.Arrays;

/**
 * For each pass the reads that could be hers: those within a reach of the expected time, at most so many of them, the
 * nearest first. Both ends never go back from one pass to the next, which is what lets a window of bits stand for all
 * that is known of the passes before.
 *
 * @param from first read of each pass's window
 * @param to one past its last read
 * @param cut whether reads within reach were left out because there were too many
 */
@SuppressWarnings("ArrayRecordComponent") // private to the package, never compared, never handed out
record Windows(int[] from, int[] to, boolean cut) {

    /**
     * Windows by time.
     *
     * @param expected expected read time of each pass, ascending
     * @param reads read times, ascending
     * @param reachS furthest read that counts
     * @param most reads in a window; where there are no more reads than this every window holds all of them
     */
    static Windows of(double[] expected, double[] reads, double reachS, int most) {
        int[] from = new int[expected.length];
        int[] to = new int[expected.length];
        if (reads.length <= most) {
            Arrays.fill(to, reads.length);
            return new Windows(from, to, false);
        }
        boolean cut = false;
        int low = 0;
        int high = 0;
        int nearest = 0;
        for (int i = 0; i < expected.length; i++) {
            while (low < reads.length && reads[low] < expected[i] - reachS) {
                low++;
            }
            high = Math.max(high, low);
            while (high < reads.length && reads[high] <= expected[i] + reachS) {
                high++;
            }
            // The window of the nearest reads moves on while the one that comes in is nearer than the one that goes.
            while (nearest + most < reads.length && reads[nearest] + reads[nearest + most] < 2 * expected[i]) {
                nearest++;
            }
            if (high - low > most) {
                cut = true;
                from[i] = Math.max(low, nearest);
                to[i] = Math.min(high, nearest + most);
            } else {
                from[i] = low;
                to[i] = high;
            }
        }
        return new Windows(from, to, cut);
    }

    int size(int pass) {
        return to[pass] - from[pass];
    }
}
