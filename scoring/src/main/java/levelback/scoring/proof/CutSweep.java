package levelback.scoring.proof;

/**
 * The counts of every cut in one pass: the cut goes down level by level, and only the cows that have a row on the level it
 * passes change. A million rows with a million levels cost no more than with four.
 */
final class CutSweep {

    private final ScoredRows rows;
    private final int[] cowOf;
    private final int[] byLevel;
    private final int[] levelStart;
    private final int[] tp;
    private final int[] fp;
    private final int[] sick;
    private final int[] sound;
    private final long[] products = new long[10];
    private long sumTp;
    private long sumFp;
    private long sumSick;
    private long sumSound;
    private long cows;
    private long cowsWithLesion;
    private long cowsClean;
    private long cowsPositive;
    private long cowsNegative;
    private int at;

    CutSweep(ScoredRows rows) {
        this.rows = rows;
        cowOf = new int[rows.rows()];
        tp = new int[rows.cows()];
        fp = new int[rows.cows()];
        sick = new int[rows.cows()];
        sound = new int[rows.cows()];
        for (int cow = 0; cow < rows.cows(); cow++) {
            for (int i = rows.cowStart[cow]; i < rows.cowStart[cow + 1]; i++) {
                cowOf[i] = cow;
                sick[cow] += rows.state[i] == ScoredRows.LESION ? 1 : 0;
                sound[cow] += rows.state[i] == ScoredRows.CLEAN ? 1 : 0;
            }
            long s = sick[cow];
            long h = sound[cow];
            sumSick += s;
            sumSound += h;
            products[7] += s * s;
            products[8] += s * h;
            products[9] += h * h;
            cows += s + h > 0 ? 1 : 0;
            cowsWithLesion += s > 0 ? 1 : 0;
            cowsClean += h > 0 ? 1 : 0;
        }
        cowsNegative = cows;
        levelStart = new int[rows.levels.length + 1];
        for (int i = 0; i < rows.levels.length; i++) {
            levelStart[i + 1] = (int) rows.counts[3 * i + 1];
        }
        for (int i = 0; i < rows.levels.length; i++) {
            levelStart[i + 1] += levelStart[i];
        }
        byLevel = new int[(int) (sumSick + sumSound)];
        int[] next = levelStart.clone();
        for (int i = 0; i < rows.rows(); i++) {
            if (rows.state[i] != ScoredRows.NOT_LIFTED) {
                byLevel[next[rows.level[i]]++] = i;
            }
        }
        at = rows.levels.length;
    }

    /** Counts at the cut that lies at a level; levels must be asked for from the highest down. */
    CutCounts downTo(int level) {
        if (level > at) {
            throw new IllegalArgumentException("the sweep has passed level " + level);
        }
        while (at > level) {
            at--;
            for (int k = levelStart[at]; k < levelStart[at + 1]; k++) {
                int row = byLevel[k];
                cross(cowOf[row], rows.state[row] == ScoredRows.LESION);
            }
        }
        return new CutCounts(
                new TwoByTwo(sumTp, sumFp, sumSick - sumTp, sumSound - sumFp),
                products,
                cows,
                cowsWithLesion,
                cowsClean,
                cowsPositive,
                cowsNegative);
    }

    /** One lifted row of a cow comes to lie at or above the cut. */
    private void cross(int cow, boolean lesion) {
        long t = tp[cow];
        long f = fp[cow];
        long s = sick[cow];
        long h = sound[cow];
        if (t + f == 0) {
            cowsPositive++;
        }
        if (lesion) {
            products[0] += 2 * t + 1;
            products[1] += f;
            products[2] += s;
            products[3] += h;
            tp[cow]++;
            sumTp++;
        } else {
            products[1] += t;
            products[4] += 2 * f + 1;
            products[5] += s;
            products[6] += h;
            fp[cow]++;
            sumFp++;
        }
        if (t + f + 1 == s + h) {
            cowsNegative--;
        }
    }
}
