package levelback.scoring.severity;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The scores of a panel as numbers: score {@code i} is {@code level[i]} given by {@code scorer[i]} to {@code clip[i]}.
 * A missing cell is a score that is not there. No scorer scores a clip twice.
 */
public final class Panel {

    private final List<String> scorers;
    private final List<Double> levels;
    private final int clips;
    private final int[] clip;
    private final int[] scorer;
    private final int[] level;

    /**
     * A panel.
     *
     * @param scorers names, in the order of their numbers
     * @param levels the scale, ascending
     * @param clips how many clips there are
     * @param clip number of the clip of each score, from 0
     * @param scorer number of the scorer of each score, from 0
     * @param level number of the level of each score, from 0
     * @throws IllegalArgumentException if the arrays differ in length, a number is out of range, or levels do not rise
     */
    public Panel(List<String> scorers, List<Double> levels, int clips, int[] clip, int[] scorer, int[] level) {
        if (clip.length != scorer.length || clip.length != level.length) {
            throw new IllegalArgumentException("clip, scorer and level differ in length");
        }
        for (int i = 1; i < levels.size(); i++) {
            if (!(levels.get(i - 1) < levels.get(i))) {
                throw new IllegalArgumentException("levels do not rise: " + levels);
            }
        }
        within(clip, clips, "clip");
        within(scorer, scorers.size(), "scorer");
        within(level, levels.size(), "level");
        this.scorers = List.copyOf(scorers);
        this.levels = List.copyOf(levels);
        this.clips = clips;
        this.clip = clip.clone();
        this.scorer = scorer.clone();
        this.level = level.clone();
    }

    private static void within(int[] numbers, int size, String what) {
        for (int number : numbers) {
            if (number < 0 || number >= size) {
                throw new IllegalArgumentException(what + " " + number + " of " + size);
            }
        }
    }

    /** Names of the scorers. */
    public List<String> scorers() {
        return scorers;
    }

    /** The scale. */
    public List<Double> levels() {
        return levels;
    }

    /** How many clips. */
    public int clips() {
        return clips;
    }

    /** How many scores. */
    public int size() {
        return clip.length;
    }

    /** Number of the clip of a score. */
    public int clip(int score) {
        return clip[score];
    }

    /** Number of the scorer of a score. */
    public int scorer(int score) {
        return scorer[score];
    }

    /** Number of the level of a score. */
    public int level(int score) {
        return level[score];
    }

    /** The score itself, on the scale. */
    public double value(int score) {
        return levels.get(level[score]);
    }

    /** Where the scores of each clip begin in {@link #byClip()}; one more entry than clips. */
    int[] clipStarts() {
        int[] starts = new int[clips + 1];
        for (int c : clip) {
            starts[c + 1]++;
        }
        Arrays.parallelPrefix(starts, Integer::sum);
        return starts;
    }

    /** The numbers of the scores, clip by clip and within a clip by scorer. */
    int[] byClip() {
        return stableSort(stableSort(identity(), scorer, scorers.size()), clip, clips);
    }

    private int[] identity() {
        int[] order = new int[clip.length];
        Arrays.setAll(order, i -> i);
        return order;
    }

    private static int[] stableSort(int[] order, int[] key, int keys) {
        int[] next = new int[keys + 1];
        for (int k : key) {
            next[k + 1]++;
        }
        Arrays.parallelPrefix(next, Integer::sum);
        int[] sorted = new int[order.length];
        for (int i : order) {
            sorted[next[key[i]]++] = i;
        }
        return sorted;
    }

    /** How many scores each scorer gave. */
    int[] scoresOfScorer() {
        int[] n = new int[scorers.size()];
        for (int s : scorer) {
            n[s]++;
        }
        return n;
    }

    /** The levels that occur, ascending. */
    int[] usedLevels() {
        return Arrays.stream(level).distinct().sorted().toArray();
    }

    /**
     * Scorers that share no clip with the first one, directly or through other scorers; empty where all hang together.
     */
    List<String> apartFromFirst() {
        int[] group = new int[scorers.size()];
        Arrays.setAll(group, i -> i);
        int[] seenBy = new int[clips];
        Arrays.fill(seenBy, -1);
        for (int i = 0; i < clip.length; i++) {
            if (seenBy[clip[i]] < 0) {
                seenBy[clip[i]] = scorer[i];
            } else {
                group[root(group, scorer[i])] = root(group, seenBy[clip[i]]);
            }
        }
        List<String> apart = new ArrayList<>();
        for (int s = 1; s < group.length; s++) {
            if (root(group, s) != root(group, 0)) {
                apart.add(scorers.get(s));
            }
        }
        return apart;
    }

    private static int root(int[] group, int member) {
        int at = member;
        while (group[at] != at) {
            group[at] = group[group[at]];
            at = group[at];
        }
        return at;
    }
}
