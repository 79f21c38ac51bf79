package levelback.scoring.herd;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;

/**
 * What one cow's scores over the visits say of her.
 *
 * @param cow her number, as text
 * @param scored days she was scored
 * @param lame of these, days she was lame
 * @param spells times she became lame or was lame at her first score: runs of lame scores
 * @param newCases lame scores after two sound ones
 * @param longestRun lame scores in her longest run
 * @param cured lame scores followed by two sound ones
 * @param firstLame day of her first lame score
 * @param lameAtLast whether her latest score was lame
 */
public record LameRecord(
        String cow,
        int scored,
        int lame,
        int spells,
        int newCases,
        int longestRun,
        int cured,
        LocalDate firstLame,
        boolean lameAtLast) {

    /** Lame scores in a row that make a cow chronic. */
    public static final int CHRONIC = 3;

    /** Most lame days first, then most new cases, then by number. */
    private static final Comparator<LameRecord> WORST_FIRST = Comparator.comparingInt(LameRecord::lame)
            .thenComparingInt(LameRecord::newCases)
            .reversed()
            .thenComparing(LameRecord::cow);

    /** Every cow with a lame score, the worst first. */
    static List<LameRecord> of(List<CowHistory> herd, double lameCut) {
        return herd.stream()
                .map(cow -> of(cow, lameCut))
                .filter(cow -> cow.lame() > 0)
                .sorted(WORST_FIRST)
                .toList();
    }

    /** Lame three times in a row or more. */
    public boolean chronic() {
        return longestRun >= CHRONIC;
    }

    private static LameRecord of(CowHistory cow, double lameCut) {
        int lame = 0;
        int spells = 0;
        int cases = 0;
        int run = 0;
        int longest = 0;
        int cured = 0;
        long first = 0;
        for (int i = 0; i < cow.size(); i++) {
            if (!cow.lame(i, lameCut)) {
                cured += i >= 2 && !cow.lame(i - 1, lameCut) && cow.lame(i - 2, lameCut) ? 1 : 0;
                run = 0;
                continue;
            }
            first = lame == 0 ? cow.day(i) : first;
            lame++;
            spells += run == 0 ? 1 : 0;
            cases += cow.afterTwoSound(i, lameCut) ? 1 : 0;
            run++;
            longest = Math.max(longest, run);
        }
        return new LameRecord(
                cow.cow(),
                cow.size(),
                lame,
                spells,
                cases,
                longest,
                cured,
                LocalDate.ofEpochDay(first),
                cow.lame(cow.size() - 1, lameCut));
    }
}
