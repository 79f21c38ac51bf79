package levelback.player.trim;

import java.util.Optional;
import levelback.scoring.foot.Claw;
import levelback.scoring.value.Leg;
import levelback.store.trim.FindingId;

/**
 * What is being said at the chute right now: the foot in hand, the zone pointed at, the line last written.
 *
 * @param leg the foot in hand
 * @param claw the claw that a typed zone goes to
 * @param chosen the zone pointed at, if any
 * @param line the line that the next touch completes, if any
 * @param changing whether the line is being corrected: every touch then changes it
 * @param toesUp whether the map is turned
 * @param letters the first letters of a code being typed
 * @param more which further page of lesion keys is open, 0 for the first
 * @param padZero whether 0 was typed on the number pad and a second digit must follow
 * @param footNext whether {@code *} was typed and a foot must follow
 */
record Entry(
        Leg leg,
        Claw claw,
        Optional<ClawZone> chosen,
        Optional<Line> line,
        boolean changing,
        boolean toesUp,
        String letters,
        int more,
        boolean padZero,
        boolean footNext) {

    /** The four steps of a finding; the one in force is asked for. */
    enum Step {
        WHERE,
        WHAT,
        HOW_BAD,
        THEN
    }

    /**
     * The line last written.
     *
     * @param placed whether its zone was pointed at, and is not only the usual one
     * @param moved whether the zone was moved with the arrows since, and not yet confirmed
     * @param said whether severity or stage was said
     */
    record Line(FindingId id, String lesion, boolean placed, boolean moved, boolean said) {}

    /** A foot just taken in hand. */
    static Entry of(Leg leg, Claw claw, boolean toesUp) {
        return new Entry(leg, claw, Optional.empty(), Optional.empty(), false, toesUp, "", 0, false, false);
    }

    /** The step in force. */
    Step step() {
        if (line.isEmpty()) {
            return chosen.isEmpty() ? Step.WHERE : Step.WHAT;
        }
        if (!line.get().placed() && !line.get().moved()) {
            return line.get().said() ? Step.THEN : Step.WHERE;
        }
        return line.get().said() ? Step.THEN : Step.HOW_BAD;
    }

    /** Ready for another finding on the same foot. */
    Entry another() {
        return new Entry(leg, claw, Optional.empty(), Optional.empty(), false, toesUp, "", 0, false, false);
    }

    Entry choose(ClawZone zone) {
        Claw at = zone.claw() == Claw.INTERDIGITAL ? claw : zone.claw();
        return new Entry(leg, at, Optional.of(zone), line, changing, toesUp, "", 0, false, false);
    }

    Entry withLine(Line now) {
        return new Entry(leg, claw, chosen, Optional.of(now), changing, toesUp, "", 0, false, false);
    }

    Entry withoutLine() {
        return new Entry(leg, claw, chosen, Optional.empty(), false, toesUp, letters, more, padZero, footNext);
    }

    Entry change(boolean on) {
        return new Entry(leg, claw, chosen, line, on, toesUp, "", 0, false, false);
    }

    Entry swapClaw() {
        Claw other = claw == Claw.LATERAL ? Claw.MEDIAL : Claw.LATERAL;
        return new Entry(leg, other, chosen, line, changing, toesUp, letters, more, padZero, footNext);
    }

    Entry turn() {
        return new Entry(leg, claw, chosen, line, changing, !toesUp, letters, more, padZero, footNext);
    }

    Entry typed(String now) {
        return new Entry(leg, claw, chosen, line, changing, toesUp, now, more, padZero, footNext);
    }

    Entry more(int page) {
        return new Entry(leg, claw, chosen, line, changing, toesUp, letters, page, false, footNext);
    }

    Entry padZero(boolean on) {
        return new Entry(leg, claw, chosen, line, changing, toesUp, letters, more, on, false);
    }

    Entry footNext(boolean on) {
        return new Entry(leg, claw, chosen, line, changing, toesUp, letters, more, false, on);
    }
}
