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

    static Complete of(Session session) {
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
        // By what they hold: the names of clips and the order of rows must move no limit.
        rows.sort(
                Comparator.comparingInt((int[] row) -> Arrays.stream(row).sum()).thenComparing(Arrays::compare));
        return new Complete(rows.toArray(int[][]::new), scorers);
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
