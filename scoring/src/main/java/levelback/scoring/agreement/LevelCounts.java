package levelback.scoring.agreement;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * How many scorers gave each level, clip by clip, equal clips pooled: what the coefficients over all scorers look at.
 * Kinds stand in the order of their counts, so that nothing depends on names or on the order of rows.
 */
final class LevelCounts {

    private final int[][] kinds;
    private final double[] clips;

    private LevelCounts(int[][] kinds, double[] clips) {
        this.kinds = kinds;
        this.clips = clips;
    }

    /** What a clip holds, as a key. */
    private static final class Kind {

        private final int[] counts;

        Kind(int[] counts) {
            this.counts = counts;
        }

        int[] counts() {
            return counts;
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof Kind kind && Arrays.equals(counts, kind.counts);
        }

        @Override
        public int hashCode() {
            return Arrays.hashCode(counts);
        }
    }

    /** Clips of a session with at least one score. */
    static LevelCounts of(Session session, int levels) {
        Map<Kind, Integer> pooled = new LinkedHashMap<>();
        for (int c = 0; c < session.clips(); c++) {
            int from = session.start(c);
            int to = session.end(c);
            if (to > from) {
                int[] counts = new int[levels];
                for (int i = from; i < to; i++) {
                    counts[session.level(i)]++;
                }
                pooled.merge(new Kind(counts), 1, Integer::sum);
            }
        }
        int[][] kinds = pooled.keySet().stream().map(Kind::counts).toArray(int[][]::new);
        Arrays.sort(kinds, Arrays::compare);
        double[] clips = new double[kinds.length];
        for (int k = 0; k < kinds.length; k++) {
            clips[k] = pooled.getOrDefault(new Kind(kinds[k]), 0);
        }
        return new LevelCounts(kinds, clips);
    }

    /** How many kinds of clip there are. */
    int kinds() {
        return kinds.length;
    }

    /** Scorers for each level on clips of a kind; not to be changed. */
    int[] counts(int kind) {
        return kinds[kind];
    }

    /** Scores on a clip of a kind. */
    int scores(int kind) {
        int scores = 0;
        for (int count : kinds[kind]) {
            scores += count;
        }
        return scores;
    }

    /** How many clips of each kind there are. */
    double[] clips() {
        return clips.clone();
    }

    /** Clips with two scores or more. */
    long compared() {
        double compared = 0;
        for (int k = 0; k < kinds.length; k++) {
            compared += scores(k) >= 2 ? clips[k] : 0;
        }
        return Math.round(compared);
    }
}
