package levelback.scoring.proof;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import levelback.scoring.value.Leg;

/**
 * Score rows folded into observations (unit cow: one for each cow, day and scorer, at her highest score; unit leg: one for
 * each leg too), by cow, day, scorer and leg. Plain arrays, since a million rows are joined in a fraction of a second.
 */
final class ScoreFolds {

    /** Legs by name, so that observations come in the order of what is read. */
    private static final List<Leg> LEGS = List.of(Leg.LF, Leg.LH, Leg.RF, Leg.RH);

    /** Score rows that came in. */
    final long rows;

    /** Rows left out because the unit is the leg and they name none. */
    final long rowsWithoutLeg;

    /** Cows of all rows, those without a leg among them. */
    final Names cows = new Names();

    final String[] cowNames;
    final int[] cowRanks;
    final String[] scorers;

    /** How many observations there are. */
    final int size;

    /** Cow of each observation, as a place in {@link #cowNames}. */
    final int[] cow;

    /** Day of each, as days since 1970. */
    final int[] day;

    final int[] scorer;
    final double[] score;

    /** Legs at the highest score, one bit each. */
    final byte[] legs;

    /** The leg the observation is about, -1 where it is about the cow. */
    final byte[] leg;

    /** Score rows folded into each. */
    final int[] folded;

    ScoreFolds(List<ScoreRow> all, ProofQuestion question) {
        boolean byLeg = question.unit() == ProofQuestion.Unit.LEG;
        int most = all.size();
        int[] cowNumber = new int[most];
        int[] days = new int[most];
        int[] scorerNumber = new int[most];
        byte[] legOf = new byte[most];
        double[] scores = new double[most];
        Names scorerNames = new Names();
        String only = question.scorer().orElse("");
        boolean one = question.scorer().isPresent();
        long seen = 0;
        long without = 0;
        int n = 0;
        LocalDate date = LocalDate.EPOCH;
        int dateDay = 0;
        for (ScoreRow row : all) {
            if (one && !row.scorer().equals(only)) {
                continue;
            }
            seen++;
            int number = cows.of(row.cow());
            if (byLeg && row.leg().isEmpty()) {
                without++;
                continue;
            }
            if (!row.date().equals(date)) {
                date = row.date();
                dateDay = Math.toIntExact(date.toEpochDay());
            }
            cowNumber[n] = number;
            days[n] = dateDay;
            scorerNumber[n] = scorerNames.of(row.scorer());
            legOf[n] = (byte) (row.leg().isEmpty() ? -1 : LEGS.indexOf(row.leg().get()));
            scores[n++] = row.score();
        }
        rows = seen;
        rowsWithoutLeg = without;
        cowNames = cows.sorted();
        cowRanks = cows.ranks();
        scorers = scorerNames.sorted();
        int[] scorerRanks = scorerNames.ranks();
        int firstDay = Arrays.stream(days, 0, n).min().orElse(0);
        long span = Arrays.stream(days, 0, n).max().orElse(0) - (long) firstDay + 1;
        long[] keys = new long[n];
        for (int i = 0; i < n; i++) {
            long key = cowRanks[cowNumber[i]] * span + (days[i] - firstDay);
            key = key * scorers.length + scorerRanks[scorerNumber[i]];
            keys[i] = byLeg ? key * LEGS.size() + legOf[i] : key;
        }
        int[] order = Names.ascending(keys);
        cow = new int[n];
        day = new int[n];
        scorer = new int[n];
        score = new double[n];
        legs = new byte[n];
        leg = new byte[n];
        folded = new int[n];
        int at = -1;
        for (int i = 0; i < n; i++) {
            int row = order[i];
            if (i == 0 || keys[row] != keys[order[i - 1]]) {
                at++;
                cow[at] = cowRanks[cowNumber[row]];
                day[at] = days[row];
                scorer[at] = scorerRanks[scorerNumber[row]];
                leg[at] = byLeg ? legOf[row] : -1;
                score[at] = Double.NEGATIVE_INFINITY;
            }
            folded[at]++;
            if (scores[row] > score[at]) {
                score[at] = scores[row];
                legs[at] = 0;
            }
            if (scores[row] == score[at] && legOf[row] >= 0) {
                legs[at] |= (byte) (1 << legOf[row]);
            }
        }
        size = at + 1;
    }

    /** Number of a leg in {@link #leg}, -1 for none. */
    static int number(java.util.Optional<Leg> of) {
        return of.isEmpty() ? -1 : LEGS.indexOf(of.get());
    }

    /** The legs of a set of bits, in the order of {@link Leg}. */
    static java.util.Set<Leg> legs(int bits) {
        java.util.EnumSet<Leg> set = java.util.EnumSet.noneOf(Leg.class);
        for (int i = 0; i < LEGS.size(); i++) {
            if ((bits >> i & 1) == 1) {
                set.add(LEGS.get(i));
            }
        }
        return set;
    }
}
