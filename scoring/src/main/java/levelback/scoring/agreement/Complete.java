package levelback.scoring.agreement;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Clips that every scorer of a session scored, as levels: one row a clip, one column a scorer. Who gave no score at all in
 * the session is not of it.
 */
final class Complete {

    private final int[][] rows;
    private final int scorers;

    private Complete(int[][] rows, int scorers) {
        this.rows = rows;
        this.scorers = scorers;
    }

    /**
     * @param drawn whether clips will be drawn again: then they stand by what they hold. It costs a sort, and nothing else
     *     looks at their order
     */
    static Complete of(Session session, boolean drawn) {
        int scorers = (int) IntStream.range(0, session.scores())
                .map(session::scorer)
                .distinct()
                .count();
        List<int[]> rows = new ArrayList<>();
        for (int c = 0; c < session.clips(); c++) {
            if (session.end(c) - session.start(c) == scorers && scorers > 0) {
                int[] row = new int[scorers];
                for (int j = 0; j < scorers; j++) {
                    // A clip's scores stand by scorer, and all are there.
                    row[j] = session.level(session.start(c) + j);
                }
                rows.add(row);
            }
        }
        int[][] all = rows.toArray(int[][]::new);
        return new Complete(drawn && all.length <= Resamples.MOST_CLIPS ? byContent(all, scorers) : all, scorers);
    }

    /**
     * By what they hold, so that names of clips and scorers and the order of rows move no limit: by the levels given, whoever
     * gave them, then by scorer, the scorers in the order of what they gave to which kind of clip.
     */
    private static int[][] byContent(int[][] rows, int scorers) {
        Content[] all = new Content[rows.length];
        for (int i = 0; i < rows.length; i++) {
            int[] levels = rows[i].clone();
            Arrays.sort(levels);
            all[i] = new Content(levels, rows[i]);
        }
        Arrays.sort(all, Comparator.comparing(Content::levels, Arrays::compare));
        long[][] gave = new long[scorers][rows.length];
        long kind = 0;
        for (int i = 0; i < all.length; i++) {
            kind += i > 0 && !Arrays.equals(all[i].levels, all[i - 1].levels) ? 1 : 0;
            for (int j = 0; j < scorers; j++) {
                gave[j][i] = kind << 32 | all[i].row[j];
            }
        }
        for (long[] one : gave) {
            Arrays.sort(one);
        }
        int[] order = IntStream.range(0, scorers)
                .boxed()
                .sorted((a, b) -> Arrays.compare(gave[a], gave[b]))
                .mapToInt(Integer::intValue)
                .toArray();
        Arrays.sort(all, Comparator.comparing(Content::levels, Arrays::compare).thenComparing((a, b) -> {
            for (int j : order) {
                if (a.row[j] != b.row[j]) {
                    return Integer.compare(a.row[j], b.row[j]);
                }
            }
            return 0;
        }));
        return Arrays.stream(all).map(content -> content.row).toArray(int[][]::new);
    }

    /** A row, and its levels whoever gave them. */
    private static final class Content {

        private final int[] levels;
        private final int[] row;

        Content(int[] levels, int[] row) {
            this.levels = levels;
            this.row = row;
        }

        int[] levels() {
            return levels;
        }
    }

    int clips() {
        return rows.length;
    }

    int scorers() {
        return scorers;
    }

    int level(int clip, int scorer) {
        return rows[clip][scorer];
    }
}
