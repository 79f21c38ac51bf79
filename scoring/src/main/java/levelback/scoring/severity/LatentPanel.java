package levelback.scoring.severity;

import java.util.List;
import java.util.Optional;

/**
 * A cumulative-link model fitted to a panel, see {@link CumulativeLinkModel}.
 *
 * @param thresholds θ between the levels that occur, ascending
 * @param scorers β of each scorer, in the panel's order, summing to zero
 * @param standardErrors of β, by the observed information
 * @param clipSd standard deviation of the clips on the logit scale
 * @param logLik logarithm of the likelihood
 * @param why what is missing, and then the lists are empty and the figures 0
 */
public record LatentPanel(
        List<Double> thresholds,
        List<Double> scorers,
        List<Double> standardErrors,
        double clipSd,
        double logLik,
        Optional<String> why) {

    /** Copies the lists. */
    public LatentPanel {
        thresholds = List.copyOf(thresholds);
        scorers = List.copyOf(scorers);
        standardErrors = List.copyOf(standardErrors);
    }

    static LatentPanel missing(String why) {
        return new LatentPanel(List.of(), List.of(), List.of(), 0, 0, Optional.of(why));
    }
}
