package levelback.player.proof;

import java.time.LocalDate;
import java.util.Optional;
import levelback.scoring.proof.LesionSet;
import levelback.scoring.proof.ProofQuestion;

/**
 * What a person sets on the page.
 *
 * @param cut a score at or above it is positive; empty for the lame cut of the herd's scale
 * @param windowToDays last day of the window; it begins on the day of the score
 * @param lesions {@code alarm}, {@code any} or codes
 * @param scorer one scorer; empty for all
 */
public record ProofSettings(
        Optional<Double> cut, int windowToDays, ProofQuestion.Unit unit, String lesions, Optional<String> scorer) {

    /** The settings of the contract: 0 to 14 days, cows, alarm lesions, everyone. */
    public static ProofSettings usual() {
        return new ProofSettings(Optional.empty(), 14, ProofQuestion.Unit.COW, "alarm", Optional.empty());
    }

    ProofSettings withCut(double newCut) {
        return new ProofSettings(Optional.of(newCut), windowToDays, unit, lesions, scorer);
    }

    ProofSettings withWindow(int days) {
        return new ProofSettings(cut, days, unit, lesions, scorer);
    }

    ProofSettings withUnit(ProofQuestion.Unit newUnit) {
        return new ProofSettings(cut, windowToDays, newUnit, lesions, scorer);
    }

    ProofSettings withLesions(String set) {
        return new ProofSettings(cut, windowToDays, unit, set, scorer);
    }

    ProofSettings withScorer(Optional<String> one) {
        return new ProofSettings(cut, windowToDays, unit, lesions, one);
    }

    /** The question asked of a herd whose scale calls a score lame from {@code lameCut} on; follow-up ends today. */
    ProofQuestion question(double lameCut, LocalDate today) {
        return new ProofQuestion(
                cut.orElse(lameCut), unit, 0, windowToDays, LesionSet.of(lesions), scorer, Optional.of(today), 0.95, 1);
    }
}
