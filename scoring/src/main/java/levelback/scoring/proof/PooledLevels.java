package levelback.scoring.proof;

import java.util.Arrays;
import java.util.Optional;

/**
 * Score levels on both sides of a cut, soundest first, each with some cow lifted: a level of which none was lifted is
 * pooled with the next level nearer the cut on its side, else with the next one further off.
 */
final class PooledLevels {

    /** How many of each side of the cut must have been lifted. */
    static final int NEEDED = 5;

    /** Whether each pooled level lies at or above the cut. */
    final boolean[] positive;

    /** Observations of each pooled level. */
    final double[] scored;

    /** The lifted among them. */
    final double[] lifted;

    /** The lifted with a lesion. */
    final double[] withLesion;

    /** The pooled level of every level. */
    final int[] poolOf;

    private PooledLevels(long[] counts, int cutLevel) {
        int levels = counts.length / 3;
        poolOf = new int[levels];
        int pools = pool(counts, cutLevel - 1, -1, 0);
        int below = pools;
        for (int level = 0; level < cutLevel; level++) {
            poolOf[level] = below - 1 - poolOf[level];
        }
        pools = pool(counts, cutLevel, 1, pools);
        positive = new boolean[pools];
        Arrays.fill(positive, below, pools, true);
        scored = new double[pools];
        lifted = new double[pools];
        withLesion = new double[pools];
        for (int level = 0; level < levels; level++) {
            scored[poolOf[level]] += counts[3 * level];
            lifted[poolOf[level]] += counts[3 * level + 1];
            withLesion[poolOf[level]] += counts[3 * level + 2];
        }
    }

    /** Levels as they are; nothing is pooled. */
    PooledLevels(boolean[] positive, double[] scored, double[] lifted, double[] withLesion) {
        this.positive = positive;
        this.scored = scored;
        this.lifted = lifted;
        this.withLesion = withLesion;
        poolOf = new int[0];
    }

    /** One side of the cut, nearest level first; returns the number of the next pool. */
    private int pool(long[] counts, int from, int step, int firstPool) {
        int pool = firstPool;
        boolean some = false;
        for (int level = from; level >= 0 && level < poolOf.length; level += step) {
            if (counts[3 * level + 1] > 0) {
                pool += some ? 1 : 0;
                some = true;
            }
            poolOf[level] = pool;
        }
        return some ? pool + 1 : pool;
    }

    /**
     * Pools.
     *
     * @param counts scored, lifted and with a lesion at each level, ascending
     * @param cutLevel the first level at or above the cut
     * @return empty where {@link #obstacle} has something to say
     */
    static Optional<PooledLevels> of(long[] counts, int cutLevel) {
        return obstacle(counts, cutLevel).isEmpty()
                ? Optional.of(new PooledLevels(counts, cutLevel))
                : Optional.empty();
    }

    /** What keeps the correction from being made, in words; empty text where nothing does. */
    static String obstacle(long[] counts, int cutLevel) {
        long negative = 0;
        long positive = 0;
        for (int level = 0; level < counts.length / 3; level++) {
            if (level >= cutLevel) {
                positive += counts[3 * level + 1];
            } else {
                negative += counts[3 * level + 1];
            }
        }
        if (negative < NEEDED) {
            return "Cannot be estimated: " + negative + " sound-scoring " + (negative == 1 ? "cow" : "cows")
                    + " lifted, " + NEEDED + " needed. Draw control lifts.";
        }
        if (positive < NEEDED) {
            return "Cannot be estimated: " + positive + " lame-scoring " + (positive == 1 ? "cow" : "cows")
                    + " lifted, " + NEEDED + " needed.";
        }
        return "";
    }

    /** How many pooled levels there are. */
    int size() {
        return scored.length;
    }

    /** Share of the lifted of a pooled level that had a lesion. */
    double share(int pool) {
        return withLesion[pool] / lifted[pool];
    }

    /** Estimated observations of a pooled level with a lesion, or without. */
    double mass(int pool, boolean lesion) {
        return scored[pool] * (lesion ? share(pool) : 1 - share(pool));
    }

    /** Observations of both sides, or of one. */
    double scored(boolean oneSide, boolean positiveSide) {
        double sum = 0;
        for (int pool = 0; pool < size(); pool++) {
            sum += !oneSide || positive[pool] == positiveSide ? scored[pool] : 0;
        }
        return sum;
    }
}
