package levelback.scoring.agreement;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;

/**
 * The scores of a panel, held as numbers: who scored which clip in which session.
 *
 * <p>Scorers and clips are in order of their code points, levels ascending, whatever the order the rows came in; nothing
 * that is computed from here depends on that order.
 */
public final class Ratings {

    private final List<String> scorers;
    private final List<String> clips;
    private final double[] levels;
    private final int[] cows;
    private final boolean byCow;
    private final long scored;
    private final Map<Integer, Session> sessions;

    private Ratings(Builder from, double[] levels) {
        this.levels = levels;
        int[] scorerOrder = order(from.scorers);
        int[] clipOrder = order(from.clips);
        scorers = sorted(from.scorers);
        clips = sorted(from.clips);
        byCow = !from.cows.isEmpty();
        cows = cowsOf(from, clipOrder);
        Map<Integer, Integer> counts = new HashMap<>();
        long all = 0;
        for (int i = 0; i < from.size; i++) {
            if (!Double.isNaN(from.score[i])) {
                counts.merge(from.session[i], 1, Integer::sum);
                all++;
            }
        }
        scored = all;
        sessions = new HashMap<>();
        counts.forEach((number, count) -> sessions.put(number, session(from, number, count, scorerOrder, clipOrder)));
    }

    /** The scores of a list; levels are the distinct scores in it. */
    public static Ratings of(List<Rating> ratings) {
        Builder builder = new Builder();
        for (Rating r : ratings) {
            builder.add(
                    r.scorer(), r.clip(), r.score().orElse(Double.NaN), r.cow().orElse(""), r.session());
        }
        return builder.build();
    }

    /** Scorers by code point. */
    public List<String> scorers() {
        return scorers;
    }

    /** Clips by code point. */
    public List<String> clips() {
        return clips;
    }

    /** Levels of the scale, ascending. */
    public double[] levels() {
        return levels.clone();
    }

    /** A level of the scale. */
    public double level(int index) {
        return levels[index];
    }

    /** How many scores there are, all sessions. */
    public long scored() {
        return scored;
    }

    /** A session, empty where nobody scored in it. */
    public Session session(int number) {
        Session session = sessions.get(number);
        return session == null ? new Session(new int[clips.size() + 1], new int[0], new int[0]) : session;
    }

    /** Whether cows are known, so that clips are clustered by cow. */
    public boolean byCow() {
        return byCow;
    }

    /** The cluster of a clip: clips of one cow share a number; a clip without a known cow has one of its own. */
    public int cluster(int clip) {
        return cows[clip];
    }

    /** One more than the highest cluster. */
    public int clusters() {
        return Arrays.stream(cows).max().orElse(-1) + 1;
    }

    private static int[] order(Map<String, Integer> numbers) {
        List<String> names = sorted(numbers);
        int[] order = new int[names.size()];
        for (int i = 0; i < order.length; i++) {
            order[numbers.getOrDefault(names.get(i), 0)] = i;
        }
        return order;
    }

    private static List<String> sorted(Map<String, Integer> numbers) {
        return numbers.keySet().stream().sorted(CodePointOrder.ORDER).toList();
    }

    private static int[] cowsOf(Builder from, int[] clipOrder) {
        int[] cows = new int[clipOrder.length];
        int[] seen = new int[from.cows.size()];
        Arrays.fill(seen, -1);
        int[] cowOfClip = new int[clipOrder.length];
        for (int i = 0; i < cows.length; i++) {
            cowOfClip[clipOrder[i]] = i < from.cowOfClip.length ? from.cowOfClip[i] - 1 : -1;
        }
        int next = 0;
        for (int i = 0; i < cows.length; i++) {
            int cow = cowOfClip[i];
            if (cow < 0) {
                cows[i] = next++;
            } else {
                if (seen[cow] < 0) {
                    seen[cow] = next++;
                }
                cows[i] = seen[cow];
            }
        }
        return cows;
    }

    private Session session(Builder from, int number, int count, int[] scorerOrder, int[] clipOrder) {
        int[] starts = new int[clipOrder.length + 1];
        for (int i = 0; i < from.size; i++) {
            if (from.session[i] == number && !Double.isNaN(from.score[i])) {
                starts[clipOrder[from.clip[i]] + 1]++;
            }
        }
        for (int c = 0; c < clipOrder.length; c++) {
            starts[c + 1] += starts[c];
        }
        int[] next = Arrays.copyOf(starts, clipOrder.length);
        long[] packed = new long[count];
        for (int i = 0; i < from.size; i++) {
            if (from.session[i] == number && !Double.isNaN(from.score[i])) {
                long level = Arrays.binarySearch(levels, from.score[i]);
                packed[next[clipOrder[from.clip[i]]]++] = (long) scorerOrder[from.scorer[i]] << 32 | level;
            }
        }
        int[] by = new int[count];
        int[] given = new int[count];
        for (int c = 0; c < clipOrder.length; c++) {
            Arrays.sort(packed, starts[c], starts[c + 1]);
            for (int k = starts[c]; k < starts[c + 1]; k++) {
                by[k] = (int) (packed[k] >>> 32);
                given[k] = (int) packed[k];
                if (k > starts[c] && by[k] == by[k - 1]) {
                    throw new IllegalArgumentException(
                            scorers.get(by[k]) + " scored " + clips.get(c) + " twice in session " + number);
                }
            }
        }
        return new Session(starts, by, given);
    }

    /** Takes the scores one by one. */
    public static final class Builder {

        private final Map<String, Integer> scorers = new HashMap<>();
        private final Map<String, Integer> clips = new HashMap<>();
        private final Map<String, Integer> cows = new HashMap<>();
        private final TreeSet<Double> levels = new TreeSet<>();
        private int[] cowOfClip = new int[16];
        private int[] scorer = new int[64];
        private int[] clip = new int[64];
        private int[] session = new int[64];
        private double[] score = new double[64];
        private double lastLevel = Double.NaN;
        private int size;

        /**
         * Takes a score.
         *
         * @param oneScore NaN for a missing cell
         * @param cow empty text where not known
         * @throws IllegalArgumentException if the clip shows another cow already
         */
        public void add(String byScorer, String ofClip, double oneScore, String cow, int inSession) {
            if (size == score.length) {
                scorer = Arrays.copyOf(scorer, 2 * size);
                clip = Arrays.copyOf(clip, 2 * size);
                session = Arrays.copyOf(session, 2 * size);
                score = Arrays.copyOf(score, 2 * size);
            }
            scorer[size] = number(scorers, byScorer);
            int c = number(clips, ofClip);
            clip[size] = c;
            session[size] = inSession;
            // Minus zero would be a level of its own.
            score[size] = oneScore + 0.0;
            if (!Double.isNaN(oneScore) && score[size] != lastLevel) {
                lastLevel = score[size];
                levels.add(lastLevel);
            }
            size++;
            if (!cow.isEmpty()) {
                if (c >= cowOfClip.length) {
                    cowOfClip = Arrays.copyOf(cowOfClip, Math.max(2 * cowOfClip.length, c + 1));
                }
                int known = number(cows, cow) + 1;
                if (cowOfClip[c] != 0 && cowOfClip[c] != known) {
                    throw new IllegalArgumentException("clip " + ofClip + " shows two cows");
                }
                cowOfClip[c] = known;
            }
        }

        /** The panel; levels are the distinct scores. */
        public Ratings build() {
            return new Ratings(this, levels.stream().mapToDouble(l -> l).toArray());
        }

        /**
         * The panel on a stated scale.
         *
         * @param scale its levels; more of them than were given are welcome
         * @throws IllegalArgumentException if a score is no level of it
         */
        public Ratings build(double[] scale) {
            double[] sorted =
                    Arrays.stream(scale).map(l -> l + 0.0).sorted().distinct().toArray();
            Optional<Double> off = levels.stream()
                    .filter(l -> Arrays.binarySearch(sorted, l) < 0)
                    .findFirst();
            if (off.isPresent()) {
                throw new IllegalArgumentException("score " + off.get() + " is no level of the scale");
            }
            return new Ratings(this, sorted);
        }

        private static int number(Map<String, Integer> numbers, String name) {
            Integer known = numbers.get(name);
            if (known == null) {
                known = numbers.size();
                numbers.put(name, known);
            }
            return known;
        }
    }
}
