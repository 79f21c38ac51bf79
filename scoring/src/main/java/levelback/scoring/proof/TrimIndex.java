package levelback.scoring.proof;

import java.util.List;
import levelback.scoring.foot.Lesions;

/** Trim rows of scored cows by cow and day, in plain arrays. */
final class TrimIndex {

    /** Trim rows of cows without a score. */
    final long ofUnscored;

    /** First row of each cow, and the number of rows at the end. */
    final int[] start;

    final int[] day;
    final byte[] leg;

    /** Lesion code of each row as a place in {@link #codes}. */
    final int[] code;

    /** Codes, ascending. */
    final String[] codes;

    final boolean[] inSet;
    final double[] chance;

    /** Places of the two that are no lesion, -1 where they do not occur. */
    final int none;

    final int refused;

    TrimIndex(List<TrimRow> trims, ScoreFolds folds, LesionSet lesions) {
        int most = trims.size();
        int[] cow = new int[most];
        int[] days = new int[most];
        int[] kept = new int[most];
        int[] codeNumber = new int[most];
        Names names = new Names();
        int n = 0;
        int row = 0;
        int firstDay = Integer.MAX_VALUE;
        int lastDay = Integer.MIN_VALUE;
        TrimRow[] rows = trims.toArray(TrimRow[]::new);
        for (TrimRow trim : rows) {
            int number = folds.cows.find(trim.cow());
            if (number >= 0) {
                cow[n] = folds.cowRanks[number];
                days[n] = Math.toIntExact(trim.date().toEpochDay());
                firstDay = Math.min(firstDay, days[n]);
                lastDay = Math.max(lastDay, days[n]);
                codeNumber[n] = names.of(trim.lesion());
                kept[n++] = row;
            }
            row++;
        }
        ofUnscored = most - (long) n;
        codes = names.sorted();
        int[] ranks = names.ranks();
        none = names.find(Lesions.NONE) < 0 ? -1 : ranks[names.find(Lesions.NONE)];
        refused = names.find(Lesions.REFUSED) < 0 ? -1 : ranks[names.find(Lesions.REFUSED)];
        long span = (long) lastDay - firstDay + 1;
        long[] keys = new long[n];
        start = new int[folds.cowNames.length + 1];
        for (int i = 0; i < n; i++) {
            keys[i] = cow[i] * span + (days[i] - firstDay);
            start[cow[i] + 1]++;
        }
        for (int i = 0; i + 1 < start.length; i++) {
            start[i + 1] += start[i];
        }
        int[] order = Names.ascending(keys);
        day = new int[n];
        leg = new byte[n];
        code = new int[n];
        inSet = new boolean[n];
        chance = new double[n];
        for (int i = 0; i < n; i++) {
            TrimRow trim = rows[kept[order[i]]];
            day[i] = days[order[i]];
            leg[i] = (byte) ScoreFolds.number(trim.leg());
            code[i] = ranks[codeNumber[order[i]]];
            inSet[i] = lesions.has(trim);
            chance[i] = trim.chance().orElse(1);
        }
    }
}
