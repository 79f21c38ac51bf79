package levelback.scoring.proof;

import java.time.LocalDate;
import java.util.AbstractList;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;
import java.util.RandomAccess;
import levelback.scoring.proof.Observation.Box;
import org.jspecify.annotations.Nullable;

/**
 * Score rows joined with the trim rows of their windows: every observation, by cow, day, scorer and leg, those with an open
 * window among them. The arithmetic reads the arrays; {@link #all} makes records of them when somebody opens a number.
 */
final class Observations {

    static final int NOT_LIFTED = Integer.MIN_VALUE;

    final ScoreFolds folds;
    final TrimIndex trims;

    /** What became of each. */
    final Box[] box;

    /** Days to the first lift, {@link #NOT_LIFTED} where there was none. */
    final int[] lag;

    /** Legs with a lesion of the set, one bit each. */
    final byte[] lesionLegs;

    /** Chance of the draw, 1 where she was not drawn. */
    final double[] chance;

    /** Where the lesion codes of each begin in {@link #codes}, and their number at the end. */
    final int[] codeStart;

    /** Codes found in the window, of the set or not, ascending and each once. */
    int[] codes;

    private Observations(ScoreFolds folds, TrimIndex trims) {
        this.folds = folds;
        this.trims = trims;
        box = new Box[folds.size];
        lag = new int[folds.size];
        lesionLegs = new byte[folds.size];
        chance = new double[folds.size];
        codeStart = new int[folds.size + 1];
        codes = new int[trims.day.length + 1];
    }

    static Observations join(List<ScoreRow> scores, List<TrimRow> trims, ProofQuestion question) {
        ScoreFolds folds = new ScoreFolds(scores, question);
        Observations joined = new Observations(folds, new TrimIndex(trims, folds, question.lesions()));
        long until = question.until().map(LocalDate::toEpochDay).orElse(Long.MAX_VALUE);
        int first = 0;
        for (int i = 0; i < folds.size; i++) {
            int end = joined.trims.start[folds.cow[i] + 1];
            if (i == 0 || folds.cow[i] != folds.cow[i - 1]) {
                first = joined.trims.start[folds.cow[i]];
            }
            // Days of a cow only grow, and so does the first row of her window.
            while (first < end && joined.trims.day[first] < (long) folds.day[i] + question.windowFromDays()) {
                first++;
            }
            joined.observe(i, first, end, (long) folds.day[i] + question.windowToDays(), until);
        }
        return joined;
    }

    private void observe(int i, int first, int end, long to, long until) {
        boolean lifted = false;
        boolean refused = false;
        boolean lesion = false;
        double drawn = 1;
        int from = codeStart[i];
        int codesEnd = from;
        lag[i] = NOT_LIFTED;
        for (int row = first; row < end && trims.day[row] <= to; row++) {
            boolean notDone = trims.code[row] == trims.refused;
            // A control lift that was not done names no leg; it concerns every leg of hers.
            if (folds.leg[i] >= 0 && trims.leg[row] != folds.leg[i] && !(notDone && trims.leg[row] < 0)) {
                continue;
            }
            if (notDone) {
                refused = true;
                continue;
            }
            if (!lifted) {
                lifted = true;
                lag[i] = trims.day[row] - folds.day[i];
            }
            drawn = Math.min(drawn, trims.chance[row]);
            if (trims.code[row] != trims.none) {
                if (codesEnd == codes.length) {
                    codes = Arrays.copyOf(codes, 2 * codes.length);
                }
                codes[codesEnd++] = trims.code[row];
            }
            if (trims.inSet[row]) {
                lesion = true;
                if (trims.leg[row] >= 0) {
                    lesionLegs[i] |= (byte) (1 << trims.leg[row]);
                }
            }
        }
        codeStart[i + 1] = distinct(from, codesEnd);
        chance[i] = drawn;
        Box became = Box.NEVER_LIFTED;
        if (lifted) {
            became = lesion ? Box.WITH_LESION : Box.NO_LESION;
        } else if (refused) {
            became = Box.REFUSED;
        } else if (to > until) {
            became = Box.WINDOW_OPEN;
        }
        box[i] = became;
    }

    /** Sorts a stretch of the codes, drops doubles and returns its new end. */
    private int distinct(int from, int end) {
        if (end - from < 2) {
            return end;
        }
        Arrays.sort(codes, from, end);
        int kept = from + 1;
        for (int i = from + 1; i < end; i++) {
            if (codes[i] != codes[kept - 1]) {
                codes[kept++] = codes[i];
            }
        }
        return kept;
    }

    /** Every observation; made when first looked into. */
    List<Observation> all() {
        return new OnDemand();
    }

    private Observation make(int i) {
        List<String> found = new ArrayList<>();
        for (int k = codeStart[i]; k < codeStart[i + 1]; k++) {
            found.add(trims.codes[codes[k]]);
        }
        return new Observation(
                folds.cowNames[folds.cow[i]],
                LocalDate.ofEpochDay(folds.day[i]),
                folds.scorers[folds.scorer[i]],
                ScoreFolds.legs(folds.legs[i]),
                folds.score[i],
                folds.folded[i],
                box[i],
                lag[i] == NOT_LIFTED ? OptionalInt.empty() : OptionalInt.of(lag[i]),
                found,
                ScoreFolds.legs(lesionLegs[i]),
                chance[i]);
    }

    /** The records, made all at once by the first who reads one. */
    private final class OnDemand extends AbstractList<Observation> implements RandomAccess {

        private @Nullable List<Observation> made;

        @Override
        public Observation get(int index) {
            return made().get(index);
        }

        @Override
        public int size() {
            return folds.size;
        }

        private synchronized List<Observation> made() {
            List<Observation> ready = made;
            if (ready == null) {
                List<Observation> list = new ArrayList<>(folds.size);
                for (int i = 0; i < folds.size; i++) {
                    list.add(make(i));
                }
                ready = List.copyOf(list);
                made = ready;
            }
            return ready;
        }
    }
}
