package levelback.scoring.severity;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import levelback.scoring.agreement.Ratings;
import levelback.scoring.agreement.Session;
import levelback.scoring.value.Estimate;
import org.apache.commons.statistics.distribution.NormalDistribution;

/** The severity of every scorer of session 1: {@link AdditiveShift} and {@link CumulativeLinkModel} side by side. */
public final class Severity {

    /** How the latent shift was made, for a reader. */
    static final String METHOD = "cumulative-logit model, clip random, adaptive Gauss–Hermite; Wald interval";

    private Severity() {}

    /**
     * The severity of every scorer who scored in session 1, by code point.
     *
     * @param confidence of the intervals, such as 0.95
     */
    public static List<ScorerSeverity> of(Ratings ratings, double confidence) {
        return of(panel(ratings), confidence);
    }

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

    /** Session 1 as a panel of those who scored in it, with the ratings' levels. */
    public static Panel panel(Ratings ratings) {
        Session session = ratings.session(1);
        int[] clip = new int[session.scores()];
        int[] scorer = new int[session.scores()];
        int[] level = new int[session.scores()];
        for (int c = 0; c < session.clips(); c++) {
            for (int i = session.start(c); i < session.end(c); i++) {
                clip[i] = c;
                scorer[i] = session.scorer(i);
                level[i] = session.level(i);
            }
        }
        int[] there = Arrays.stream(scorer).distinct().sorted().toArray();
        int[] numbered =
                Arrays.stream(scorer).map(s -> Arrays.binarySearch(there, s)).toArray();
        return new Panel(
                Arrays.stream(there).mapToObj(s -> ratings.scorers().get(s)).toList(),
                Arrays.stream(ratings.levels()).boxed().toList(),
                session.clips(),
                clip,
                numbered,
                level);
    }
}
