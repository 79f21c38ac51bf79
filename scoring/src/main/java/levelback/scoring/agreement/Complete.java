package levelback.scoring.agreement;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
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
        rows.sort(byContent(rows));
        return new Complete(rows.toArray(int[][]::new), scorers);
    }

    /**
     * By what they hold, so that names of clips and scorers and the order of rows move no limit: by the levels given, whoever
     * gave them, then by scorer, the scorers in the order of what they gave to which kind of clip.
     */
    private static Comparator<int[]> byContent(List<int[]> rows) {
        Map<List<Integer>, Integer> kinds = new TreeMap<>(Complete::compare);
        List<List<Integer>> keys = rows.stream()
                .map(row -> Arrays.stream(row).sorted().boxed().toList())
                .toList();
        keys.forEach(key -> kinds.put(key, 0));
        int next = 0;
        for (Map.Entry<List<Integer>, Integer> kind : kinds.entrySet()) {
            kind.setValue(next++);
        }
        int scorers = rows.isEmpty() ? 0 : rows.get(0).length;
        long[][] gave = new long[scorers][rows.size()];
        for (int i = 0; i < rows.size(); i++) {
            long kind = kinds.getOrDefault(keys.get(i), 0);
            for (int j = 0; j < scorers; j++) {
                gave[j][i] = kind << 32 | rows.get(i)[j];
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
        return Comparator.comparing((int[] row) -> Arrays.stream(row).sorted().toArray(), Arrays::compare)
                .thenComparing(row -> Arrays.stream(order).map(j -> row[j]).toArray(), Arrays::compare);
    }

    private static int compare(List<Integer> one, List<Integer> other) {
        for (int i = 0; i < Math.min(one.size(), other.size()); i++) {
            if (!one.get(i).equals(other.get(i))) {
                return Integer.compare(one.get(i), other.get(i));
            }
        }
        return Integer.compare(one.size(), other.size());
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
