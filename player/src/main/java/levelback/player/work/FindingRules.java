package levelback.player.work;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import levelback.scoring.foot.Claw;
import levelback.scoring.foot.Lesion;
import levelback.scoring.foot.Lesions;
import levelback.scoring.value.Leg;

/** What goes with what on a line of the card. */
final class FindingRules {

    /**
     * The stages that can be written for digital dermatitis. Döpfer and others 1997 as adapted by Berry and others 2012;
     * M0 is normal skin and therefore no finding.
     */
    static final List<String> STAGES = List.of("M1", "M2", "M3", "M4", "M4.1");

    private FindingRules() {}

    static Lesion lesion(String code) {
        return Lesions.byCode(code)
                .orElseThrow(() ->
                        new CardRefused("No lesion has the code " + code + "; take one of the codes on the keys."));
    }

    static void check(Lesion lesion, FindingDraft draft) {
        draft.zone().ifPresent(FindingRules::checkZone);
        draft.severity().ifPresent(level -> {
            if (level < 1 || level > 3) {
                throw new CardRefused("How bad is 1 mild, 2 moderate or 3 severe, not " + level + ".");
            }
            if (lesion.staged()) {
                throw new CardRefused(
                        lesion.code() + " takes a stage (M1, M2, M3, M4, M4.1) in place of mild, moderate, severe.");
            }
        });
        if (!draft.stage().isEmpty()) {
            if (!lesion.staged()) {
                throw new CardRefused("Stages M1 to M4.1 belong to digital dermatitis, not to " + lesion.code() + ".");
            }
            if (!STAGES.contains(draft.stage())) {
                throw new CardRefused("The stages are M1, M2, M3, M4 and M4.1, not " + draft.stage() + ".");
            }
        }
    }

    static void checkZone(int zone) {
        if (zone < 0 || zone > 12) {
            throw new CardRefused("The claw map has zones 0 to 12, not " + zone + ".");
        }
    }

    static OptionalInt usualZone(Lesion lesion) {
        return lesion.usualZones().stream().mapToInt(Integer::intValue).findFirst();
    }

    /**
     * The claw of a line. Zone 0 is the cleft and zone 10 the skin above it at the heel (International Lameness Committee
     * map), so both lie between the claws whatever was said. With nothing said: the outer claw behind, the inner in front,
     * where most lesions are met (common practice).
     */
    static Claw claw(Leg leg, OptionalInt zone, Optional<Claw> said) {
        if (zone.isPresent() && (zone.getAsInt() == 0 || zone.getAsInt() == 10)) {
            return Claw.INTERDIGITAL;
        }
        return said.filter(claw -> claw != Claw.INTERDIGITAL || zone.isEmpty())
                .orElse(leg.isFore() ? Claw.MEDIAL : Claw.LATERAL);
    }
}
