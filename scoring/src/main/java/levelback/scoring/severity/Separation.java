package levelback.scoring.severity;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Whether a finite shift exists for every scorer. A score in level j by scorer s says {@code θj₋₁ < βs < θj}; moving along a direction that
 * breaks none of these only makes the scores likelier. There is no such direction exactly when scorers and thresholds, joined
 * by these signs, can all be reached from each other.
 */
final class Separation {

    private Separation() {}

    /** The reason why there is no finite shift; empty where there is one. */
    static Optional<String> of(Panel panel, int[] used) {
        int scorers = panel.scorers().size();
        int size = scorers + used.length - 1;
        int[] rank = new int[panel.levels().size()];
        for (int j = 0; j < used.length; j++) {
            rank[used[j]] = j;
        }
        boolean[][] below = new boolean[size][size];
        for (int i = 0; i < panel.size(); i++) {
            int level = rank[panel.level(i)];
            if (level < used.length - 1) {
                below[panel.scorer(i)][scorers + level] = true;
            }
            if (level > 0) {
                below[scorers + level - 1][panel.scorer(i)] = true;
            }
        }
        for (int k = 0; k < size; k++) {
            for (int i = 0; i < size; i++) {
                for (int j = 0; below[i][k] && j < size; j++) {
                    below[i][j] |= below[k][j];
                }
            }
        }
        List<String> loose = new ArrayList<>();
        for (int s = 1; s < scorers; s++) {
            if (!below[0][s] || !below[s][0]) {
                loose.add(panel.scorers().get(s));
            }
        }
        if (!loose.isEmpty()) {
            return Optional.of("The scores of " + panel.scorers().get(0) + " and those of " + String.join(", ", loose)
                    + " are parted by a level: no finite latent shift fits best.");
        }
        for (int j = scorers; j < size; j++) {
            if (!below[0][j] || !below[j][0]) {
                return Optional.of("A level parts the scorers: no finite latent shift fits best.");
            }
        }
        return Optional.empty();
    }
}
