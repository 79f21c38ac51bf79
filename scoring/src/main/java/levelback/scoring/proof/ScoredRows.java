package levelback.scoring.proof;

import java.util.Arrays;
import java.util.List;

/**
 * The observations that count, as plain arrays in the order of the cows: what the arithmetic reads of them.
 *
 * <p>Every figure is a sum over rows or over cows, so a million rows cost a few passes over these arrays.
 */
final class ScoredRows {

    /** Not lifted: never, or refused. */
    static final byte NOT_LIFTED = 0;

    /** Lifted, no lesion of the set. */
    static final byte CLEAN = 1;

    /** Lifted, a lesion of the set. */
    static final byte LESION = 2;

    /** Distinct scores, ascending. */
    final double[] levels;

    /** First row of each cow, and the number of rows at the end. */
    final int[] cowStart;

    /** Level of each row. */
    final int[] level;

    /** What became of each row. */
    final byte[] state;

    /** Chance of the draw of each row, 1 where there was none. */
    final double[] chance;

    /** Scored, lifted and lesions at each level, three numbers a level. */
    final long[] counts;

    /** @param scored sorted by cow */
    ScoredRows(List<Observation> scored) {
        int n = scored.size();
        double[] score = new double[n];
        state = new byte[n];
        chance = new double[n];
        int[] starts = new int[n + 1];
        int cows = 0;
        String cow = "";
        int row = 0;
        for (Observation o : scored) {
            if (row == 0 || !o.cow().equals(cow)) {
                starts[cows++] = row;
                cow = o.cow();
            }
            // 0 and -0 are one level.
            score[row] = o.score() + 0.0;
            state[row] = o.isLifted() ? o.hasLesion() ? LESION : CLEAN : NOT_LIFTED;
            chance[row] = o.chance();
            row++;
        }
        starts[cows] = n;
        cowStart = Arrays.copyOf(starts, cows + 1);
        levels = Arrays.stream(score).sorted().distinct().toArray();
        level = new int[n];
        counts = new long[3 * levels.length];
        for (int i = 0; i < n; i++) {
            level[i] = Arrays.binarySearch(levels, score[i]);
            counts[3 * level[i]]++;
            counts[3 * level[i] + 1] += state[i] == NOT_LIFTED ? 0 : 1;
            counts[3 * level[i] + 2] += state[i] == LESION ? 1 : 0;
        }
    }

    int cows() {
        return cowStart.length - 1;
    }

    int rows() {
        return level.length;
    }

    /** Index of the lowest level at or above a cut; the number of levels where none is. */
    int levelOf(double cut) {
        int at = Arrays.binarySearch(levels, cut + 0.0);
        return at < 0 ? -at - 1 : at;
    }

    /** Whether some cow has more than one row; of the lifted only, where asked. */
    boolean repeats(boolean liftedOnly) {
        for (int cow = 0; cow < cows(); cow++) {
            int rows = 0;
            for (int i = cowStart[cow]; i < cowStart[cow + 1]; i++) {
                rows += liftedOnly && state[i] == NOT_LIFTED ? 0 : 1;
            }
            if (rows > 1) {
                return true;
            }
        }
        return false;
    }
}
