package levelback.player.trim;

import java.util.List;
import levelback.scoring.foot.FootAction;
import levelback.scoring.value.Leg;

/** Something the page asks before it writes; answered on the page, never in a window of its own. */
sealed interface Question {

    /**
     * A block is to go on a claw that carries an injury.
     *
     * @param codes the lesions on that claw
     */
    record BlockOnInjuredClaw(Leg leg, FootAction action, List<String> codes) implements Question {}

    /** The card is to be closed while of some lifted feet nothing was said. */
    record FeetUnsaid(List<Leg> legs) implements Question {}
}
