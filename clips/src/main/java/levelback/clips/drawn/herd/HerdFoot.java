package levelback.clips.drawn.herd;

import java.util.List;
import levelback.scoring.value.Leg;

/**
 * A foot in hand.
 *
 * @param leg which
 * @param examined false where a block was only taken off; such a foot is no evidence for or against a lesion
 * @param findings what was written down; an examined foot with none is a foot without lesion
 * @param actions what was done, by the stable keys of the chute ({@code trimmed}, {@code block-inner} and so on)
 */
public record HerdFoot(Leg leg, boolean examined, List<HerdFinding> findings, List<String> actions) {
    public HerdFoot {
        findings = List.copyOf(findings);
        actions = List.copyOf(actions);
    }
}
