package levelback.store.trim;

import java.util.List;
import java.util.Set;
import levelback.scoring.foot.FootAction;

/** A lifted foot with all that is written about it. */
public record FootCard(Foot foot, List<Finding> findings, Set<FootAction> actions) {
    public FootCard {
        findings = List.copyOf(findings);
        actions = Set.copyOf(actions);
    }
}
