package levelback.scoring.severity;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.EigenDecompositionSymmetric;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * The cumulative-link mixed model {@code logit P(Y ≤ j) = θj − (βscorer + uclip)}, {@code uclip} normal with mean 0, the scorers'
 * effects summing to zero (positive: scores higher than the panel), by maximum likelihood with adaptive Gauss–Hermite of 15
 * nodes (45 or 121 where clips differ so much that 15 do not do). It looks at the order of the levels only. Levels that nobody gave drop out.
 *
 * <p>No answer, and a sentence why: one scorer; one level; scorers that no shared clip joins; scores of some scorers that
 * never cross those of others (every finite estimate could be bettered by a larger one); every clip scored alike by all;
 * clips that differ without bound; no convergence. Clips that do not differ at all: the clips' standard deviation is 0
 * and the rest is the cumulative-logit model without clips.
 *
 * <p>Source: Tutz and Hennevogl 1996, doi:10.1016/0167-9473(96)00004-7 (from memory). Agrees with {@code clmm(…, nAGQ = 15)} of
 * R's ordinal to 5e-4.
 */
public final class CumulativeLinkModel {

    private static final int STEPS = 100;

    /**
     * Where clips differ so much that a clip's likelihood is cut off steeply, 15 nodes give a value and a slope that do not
     * belong together, and no step looks better; then more of them.
     */
    private static final int[] NODES = {15, 45, 121};

    /** A clip spread past this: the scorers agree so well that the logit scale has lost its unit. */
    private static final double WIDEST = 60;

    private CumulativeLinkModel() {}

    /** Fits the model. */
    public static LatentPanel fit(Panel panel) {
        int[] used = panel.usedLevels();
        Optional<String> why = notPossible(panel, used);
        if (why.isPresent()) {
            return LatentPanel.missing(why.get());
        }
        int[] rank = new int[panel.levels().size()];
        for (int j = 0; j < used.length; j++) {
            rank[used[j]] = j;
        }
        int thresholds = used.length - 1;
        int scorers = panel.scorers().size();
        MarginalLikelihood likelihood = new MarginalLikelihood(panel, rank, used.length, NODES[0]);
        RealMatrix contrasts = contrasts(thresholds, scorers);
        double[] at = start(panel, rank, thresholds, scorers);
        likelihood.at(at);
        int finer = 0;
        for (int step = 0; step < STEPS; step++) {
            if (!likelihood.finite()) {
                return LatentPanel.missing("The latent model left the range of numbers before it had converged.");
            }
            RealVector gradient = contrasts.preMultiply(new ArrayRealVector(likelihood.gradient()));
            RealMatrix information = information(likelihood, contrasts);
            EigenDecompositionSymmetric eigen = new EigenDecompositionSymmetric(information);
            RealVector move = uphill(eigen, gradient);
            double gain = move.dotProduct(gradient);
            double[] direction = contrasts.operate(move).toArray();
            if (gain < 1e-12) {
                return result(at, thresholds, scorers, likelihood.value(), eigen, contrasts);
            }
            Optional<double[]> next = better(likelihood, at, direction, thresholds, gain);
            if (next.isEmpty() && finer + 1 < NODES.length) {
                likelihood.nodes(NODES[++finer]);
                likelihood.at(at);
                continue;
            }
            if (next.isEmpty()) {
                return LatentPanel.missing("The latent model found no better step before it had converged.");
            }
            at = next.get();
            if (Math.abs(at[thresholds + scorers]) > WIDEST) {
                return LatentPanel.missing("The scorers agree so well that the clips differ without bound on the latent"
                        + " scale: it has no unit to measure a shift in.");
            }
        }
        return LatentPanel.missing("The latent model did not converge in " + STEPS + " steps.");
    }

    private static Optional<String> notPossible(Panel panel, int[] used) {
        if (panel.scorers().size() < 2) {
            return Optional.of("One scorer alone: there is no panel to compare with.");
        }
        if (used.length < 2) {
            return Optional.of("Only one level was given: nothing separates the scorers.");
        }
        List<String> apart = panel.apartFromFirst();
        if (!apart.isEmpty()) {
            return Optional.of("No shared clip joins " + panel.scorers().get(0) + " with " + String.join(", ", apart)
                    + ": let them score some of the same clips.");
        }
        int[] starts = panel.clipStarts();
        int[] order = panel.byClip();
        boolean alike = true;
        for (int c = 0; c < panel.clips(); c++) {
            for (int i = starts[c] + 1; i < starts[c + 1]; i++) {
                alike &= panel.level(order[i]) == panel.level(order[i - 1]);
            }
        }
        if (alike) {
            return Optional.of(
                    "Every clip was scored alike by all: the latent scale has no unit to measure a shift in.");
        }
        return Separation.of(panel, used);
    }

    private static double[] start(Panel panel, int[] rank, int thresholds, int scorers) {
        double[] upTo = new double[thresholds + 1];
        for (int i = 0; i < panel.size(); i++) {
            upTo[rank[panel.level(i)]]++;
        }
        Arrays.parallelPrefix(upTo, Double::sum);
        double[] at = new double[thresholds + scorers + 1];
        for (int j = 0; j < thresholds; j++) {
            at[j] = 1.15 * Math.log(upTo[j] / (panel.size() - upTo[j]));
        }
        at[thresholds + scorers] = 1;
        return at;
    }

    /** From the free parameters (the last scorer left out) to all of them. */
    private static RealMatrix contrasts(int thresholds, int scorers) {
        int size = thresholds + scorers + 1;
        RealMatrix contrasts = new Array2DRowRealMatrix(size, size - 1);
        int last = thresholds + scorers - 1;
        for (int i = 0; i < last; i++) {
            contrasts.setEntry(i, i, 1);
            if (i >= thresholds) {
                contrasts.setEntry(last, i, -1);
            }
        }
        contrasts.setEntry(size - 1, size - 2, 1);
        return contrasts;
    }

    private static RealMatrix information(MarginalLikelihood likelihood, RealMatrix contrasts) {
        RealMatrix hessian = new Array2DRowRealMatrix(likelihood.hessian(), false);
        RealMatrix free = contrasts.transpose().multiply(hessian).multiply(contrasts);
        return free.add(free.transpose()).scalarMultiply(-0.5);
    }

    /** Newton's step, turned uphill where the likelihood bends the wrong way. */
    private static RealVector uphill(EigenDecompositionSymmetric eigen, RealVector gradient) {
        RealVector turned = eigen.getVT().operate(gradient);
        for (int i = 0; i < turned.getDimension(); i++) {
            turned.setEntry(i, turned.getEntry(i) / Math.max(Math.abs(eigen.getEigenvalue(i)), 1e-8));
        }
        return eigen.getV().operate(turned);
    }

    private static Optional<double[]> better(
            MarginalLikelihood likelihood, double[] at, double[] direction, int thresholds, double gain) {
        double before = likelihood.value();
        double longest = Arrays.stream(direction).map(Math::abs).max().orElse(0);
        double share = Math.min(1, 5 / longest);
        for (int halving = 0; halving < 40; halving++) {
            double[] next = at.clone();
            for (int i = 0; i < next.length; i++) {
                next[i] += share * direction[i];
            }
            if (rises(next, thresholds)) {
                likelihood.at(next);
                // Near the top the gain is below what 15 nodes can tell; the step is taken as it is.
                if (likelihood.finite()
                        && (likelihood.value() >= before + 1e-4 * share * gain || (gain < 1e-5 && share > 0.9))) {
                    return Optional.of(next);
                }
            }
            share /= 2;
        }
        return Optional.empty();
    }

    private static boolean rises(double[] parameters, int thresholds) {
        for (int j = 1; j < thresholds; j++) {
            if (!(parameters[j - 1] < parameters[j])) {
                return false;
            }
        }
        return true;
    }

    private static LatentPanel result(
            double[] at,
            int thresholds,
            int scorers,
            double logLik,
            EigenDecompositionSymmetric eigen,
            RealMatrix contrasts) {
        double[] values = eigen.getEigenvalues();
        double most = Arrays.stream(values).max().orElse(0);
        if (!(Arrays.stream(values).min().orElse(0) > 1e-9 * most)) {
            return LatentPanel.missing("The scores do not tell scorers, thresholds and clips apart.");
        }
        List<Double> errors = new ArrayList<>();
        for (int s = 0; s < scorers; s++) {
            RealVector turned = eigen.getVT().operate(contrasts.getRowVector(thresholds + s));
            double variance = 0;
            for (int i = 0; i < values.length; i++) {
                variance += turned.getEntry(i) * turned.getEntry(i) / values[i];
            }
            errors.add(Math.sqrt(variance));
        }
        double sd = Math.abs(at[thresholds + scorers]);
        return new LatentPanel(
                Arrays.stream(at, 0, thresholds).boxed().toList(),
                Arrays.stream(at, thresholds, thresholds + scorers).boxed().toList(),
                errors,
                sd < 1e-5 ? 0 : sd,
                logLik,
                Optional.empty());
    }
}
