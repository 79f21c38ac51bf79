package levelback.scoring.severity;

import java.util.ArrayList;
import java.util.List;
import levelback.scoring.value.Estimate;
import org.apache.commons.statistics.distribution.NormalDistribution;

/** The severity of every scorer of a panel: {@link AdditiveShift} and {@link CumulativeLinkModel} side by side. */
public final class Severity {

    /** How the latent shift was made, for a reader. */
    static final String METHOD = "cumulative-logit model, clip random, adaptive Gauss–Hermite; Wald interval";

    private Severity() {}

    /** The severity of every scorer of a panel, in its order. {@code n}: clips she scored (shift: and another did too). */
    public static List<ScorerSeverity> of(Panel panel, double confidence) {
        List<Estimate> shifts = AdditiveShift.of(panel, confidence);
        LatentPanel fit = CumulativeLinkModel.fit(panel);
        int[] n = panel.scoresOfScorer();
        double z = NormalDistribution.of(0, 1).inverseSurvivalProbability((1 - confidence) / 2);
        List<ScorerSeverity> severity = new ArrayList<>();
        for (int s = 0; s < n.length; s++) {
            Estimate latent;
            if (fit.why().isPresent()) {
                latent = Estimate.missing(n[s], METHOD, fit.why().get());
            } else {
                double value = fit.scorers().get(s);
                double half = z * fit.standardErrors().get(s);
                latent = Estimate.of(value, value - half, value + half, n[s], METHOD);
            }
            severity.add(new ScorerSeverity(panel.scorers().get(s), shifts.get(s), latent));
        }
        return severity;
    }
}
