package levelback.scoring.herd;

import java.util.List;
import java.util.Optional;
import levelback.scoring.proof.ScoreRow;
import levelback.scoring.proof.TrimRow;

/**
 * A herd over all its visits. A visit is a day with a score; several rows of a cow on a day fold into her highest score.
 *
 * @param question what was asked
 * @param visits every day, oldest first
 * @param changes from each visit to the next; one fewer than visits
 * @param newCases lame scores after two sound ones, and their rate
 * @param chronic cows with three or more lame scores in a row
 * @param cured times a lame score is followed by two sound scores in a row
 * @param daysToTreatment empty where no trim records were given, or no cow was scored lame
 * @param lameCows every cow with a lame score, most lame visits first
 */
public record HerdFigures(
        HerdQuestion question,
        List<VisitPrevalence> visits,
        List<VisitChange> changes,
        NewCases newCases,
        long chronic,
        long cured,
        Optional<DaysToTreatment> daysToTreatment,
        List<LameRecord> lameCows) {

    public HerdFigures {
        visits = List.copyOf(visits);
        changes = List.copyOf(changes);
        lameCows = List.copyOf(lameCows);
    }

    /**
     * Works them out.
     *
     * @param scores in any order
     * @param trims in any order; empty where no trim records were given, which is not the same as none found
     * @throws IllegalArgumentException if more cows were scored on a day than the herd has
     */
    public static HerdFigures of(List<ScoreRow> scores, Optional<List<TrimRow>> trims, HerdQuestion question) {
        double cut = question.lameCut();
        List<CowHistory> herd = CowHistory.of(scores);
        List<LameRecord> lame = LameRecord.of(herd, cut);
        return new HerdFigures(
                question,
                VisitPrevalence.of(scores, cut, question.severeCut(), question.herdSize(), question.level()),
                VisitChange.all(herd, cut),
                NewCases.of(herd, cut, question.level()),
                lame.stream().filter(LameRecord::chronic).count(),
                lame.stream().mapToLong(LameRecord::cured).sum(),
                trims.filter(t -> !lame.isEmpty()).map(t -> DaysToTreatment.of(scores, t, cut, question.level())),
                lame);
    }
}
