package levelback.scoring.proof;

import java.util.Arrays;
import java.util.List;
import levelback.scoring.proof.Observation.Box;

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

    /** Of everything that was joined, those whose window is not open. */
    ScoredRows(Observations joined) {
        ScoreFolds folds = joined.folds;
        int n = 0;
        for (int i = 0; i < folds.size; i++) {
            n += joined.box[i] == Box.WINDOW_OPEN ? 0 : 1;
        }
        double[] score = new double[n];
        state = new byte[n];
        chance = new double[n];
        int[] starts = new int[n + 1];
        int cows = 0;
        int row = 0;
        int cow = -1;
        for (int i = 0; i < folds.size; i++) {
            Box box = joined.box[i];
            if (box == Box.WINDOW_OPEN) {
                continue;
            }
            if (folds.cow[i] != cow) {
                cow = folds.cow[i];
                starts[cows++] = row;
            }
            score[row] = folds.score[i];
            state[row] = box == Box.WITH_LESION ? LESION : box == Box.NO_LESION ? CLEAN : NOT_LIFTED;
            chance[row++] = joined.chance[i];
        }
        starts[cows] = n;
        cowStart = Arrays.copyOf(starts, cows + 1);
        levels = distinct(score);
        level = new int[n];
        counts = new long[3 * levels.length];
        count(score);
    }

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
            score[row] = o.score();
            state[row] = o.isLifted() ? o.hasLesion() ? LESION : CLEAN : NOT_LIFTED;
            chance[row] = o.chance();
            row++;
        }
        starts[cows] = n;
        cowStart = Arrays.copyOf(starts, cows + 1);
        levels = distinct(score);
        level = new int[n];
        counts = new long[3 * levels.length];
        count(score);
    }

    /** Distinct scores, ascending; 0 and -0 are one. Scales have few levels, and then nothing is sorted. */
    private static double[] distinct(double[] score) {
        double[] few = new double[64];
        int n = 0;
        for (int i = 0; i < score.length; i++) {
            score[i] += 0.0;
            int at = Arrays.binarySearch(few, 0, n, score[i]);
            if (at < 0) {
                if (n == few.length) {
                    for (int k = i; k < score.length; k++) {
                        score[k] += 0.0;
                    }
                    return Arrays.stream(score).sorted().distinct().toArray();
                }
                System.arraycopy(few, -at - 1, few, -at, n + at + 1);
                few[-at - 1] = score[i];
                n++;
            }
        }
        return Arrays.copyOf(few, n);
    }

    private void count(double[] score) {
        for (int i = 0; i < score.length; i++) {
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
