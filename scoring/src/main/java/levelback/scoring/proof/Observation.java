package levelback.scoring.proof;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import levelback.scoring.value.Leg;

/**
 * One judgement and what became of it: a cow, a day and a scorer (and a leg, where the unit is the leg). Every count of a
 * proof can be opened into these.
 *
 * @param cow her number
 * @param date day of the score
 * @param scorer who gave it; empty text where not said
 * @param legs the leg or legs at her highest score; empty where none was named
 * @param score the highest score of the rows folded into it
 * @param rows score rows folded into it
 * @param box what became of it
 * @param lagDays days from the score to her first lift in the window; empty where she was not lifted
 * @param codes lesion codes found in the window, of the set or not, in order
 * @param lesionLegs legs with a lesion of the set, in order
 * @param chance known chance with which she was drawn, 1 where she was not drawn
 */
public record Observation(
        String cow,
        LocalDate date,
        String scorer,
        Set<Leg> legs,
        double score,
        int rows,
        Box box,
        OptionalInt lagDays,
        List<String> codes,
        Set<Leg> lesionLegs,
        double chance) {

    /** What became of a judgement. */
    public enum Box {
        /** Lifted in the window, with a lesion of the set. */
        WITH_LESION,
        /** Lifted in the window, no lesion of the set. */
        NO_LESION,
        /** Not lifted in the window. */
        NEVER_LIFTED,
        /** Drawn as a control lift, and not done. */
        REFUSED,
        /** Not lifted so far, and the window is still open: left out of every figure. */
        WINDOW_OPEN
    }

    public Observation {
        codes = List.copyOf(codes);
    }

    /** Whether a foot was lifted in the window. */
    public boolean isLifted() {
        return box == Box.WITH_LESION || box == Box.NO_LESION;
    }

    /** Whether it counts at all: the window is not open any more. */
    public boolean isScored() {
        return box != Box.WINDOW_OPEN;
    }

    /** Whether a lesion of the set was found. */
    public boolean hasLesion() {
        return box == Box.WITH_LESION;
    }

    /** The one leg it is about; empty where none or several stand at her highest score. */
    public Optional<Leg> leg() {
        return legs.size() == 1 ? Optional.of(legs.iterator().next()) : Optional.empty();
    }
}
