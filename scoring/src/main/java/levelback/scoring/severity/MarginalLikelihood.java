package levelback.scoring.severity;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.hipparchus.analysis.integration.gauss.GaussIntegrator;
import org.hipparchus.analysis.integration.gauss.GaussIntegratorFactory;

/**
 * The likelihood of a panel with the clips integrated out by adaptive Gauss–Hermite, its gradient and its
 * curvature. Gradient and curvature are the posterior means of the complete-data ones (Louis 1982,
 * doi:10.1111/j.2517-6161.1982.tb01203.x). Clips with the same scores count once, with their number.
 *
 * <p>Parameters: thresholds, then scorers, then the clips' standard deviation.
 */
final class MarginalLikelihood {

    private final int scorers;
    private final int thresholds;
    private final int size;
    private final int[][] patterns;
    private final double[] weights;
    private final double[] modes;
    private double[] nodes = new double[0];
    private double[] logWeights = new double[0];

    private double value;
    private double[] gradient = new double[0];
    private double[][] hessian = new double[0][0];

    /** Takes the panel; {@code rank} is the number of each level among those that occur. */
    MarginalLikelihood(Panel panel, int[] rank, int levels, int nodes) {
        scorers = panel.scorers().size();
        thresholds = levels - 1;
        size = thresholds + scorers + 1;
        int[] starts = panel.clipStarts();
        int[] order = panel.byClip();
        Map<List<Integer>, Integer> pooled = new HashMap<>();
        for (int c = 0; c < panel.clips(); c++) {
            if (starts[c] < starts[c + 1]) {
                List<Integer> cells = Arrays.stream(order, starts[c], starts[c + 1])
                        .mapToObj(i -> panel.scorer(i) * levels + rank[panel.level(i)])
                        .toList();
                pooled.merge(cells, 1, Integer::sum);
            }
        }
        patterns = new int[pooled.size()][];
        weights = new double[pooled.size()];
        modes = new double[pooled.size()];
        int at = 0;
        for (Map.Entry<List<Integer>, Integer> entry : pooled.entrySet()) {
            patterns[at] = entry.getKey().stream().mapToInt(i -> i).toArray();
            weights[at++] = entry.getValue();
        }
        nodes(nodes);
    }

    /** Integrates with so many nodes from now on. */
    void nodes(int number) {
        GaussIntegrator rule = new GaussIntegratorFactory().hermite(number);
        nodes = new double[number];
        logWeights = new double[number];
        for (int k = 0; k < number; k++) {
            nodes[k] = rule.getPoint(k);
            logWeights[k] = Math.log(rule.getWeight(k)) + nodes[k] * nodes[k];
        }
    }

    /** How many different clips there are; equal ones count once. */
    int patterns() {
        return patterns.length;
    }

    double value() {
        return value;
    }

    double[] gradient() {
        return gradient;
    }

    double[][] hessian() {
        return hessian;
    }

    /** Moves to these parameters. */
    void at(double[] parameters) {
        value = 0;
        gradient = new double[size];
        hessian = new double[size][size];
        Cells cells = new Cells(parameters, thresholds, scorers);
        double[][] scores = new double[nodes.length][size];
        double[] logs = new double[nodes.length];
        for (int p = 0; p < patterns.length; p++) {
            clip(cells, patterns[p], p, weights[p], scores, logs);
        }
    }

    /** Whether value, gradient and curvature are numbers: far from the top they may overflow. */
    boolean finite() {
        return Double.isFinite(value)
                && Arrays.stream(gradient).allMatch(Double::isFinite)
                && Arrays.stream(hessian).flatMapToDouble(Arrays::stream).allMatch(Double::isFinite);
    }

    /** Past this the chances of all cells are 0 or 1 to the last digit, and products would overflow. */
    private static double spread(double at) {
        return Math.exp(Math.max(-150, Math.min(150, at)));
    }

    private void clip(Cells cells, int[] pattern, int p, double weight, double[][] scores, double[] logs) {
        double sd = cells.sd();
        double z = modes[p];
        double curvature = 1;
        for (int step = 0; step < 60; step++) {
            double slope = -z;
            curvature = 1;
            double e = spread(sd * z);
            for (int cell : pattern) {
                cells.look(cell, e);
                slope -= sd * cells.slope();
                curvature -= sd * sd * cells.curvature();
            }
            double move = Math.max(-2, Math.min(2, slope / curvature));
            z += move;
            if (Math.abs(move) < 1e-9) {
                break;
            }
        }
        modes[p] = z;
        double scale = Math.sqrt(2 / curvature);
        double top = Double.NEGATIVE_INFINITY;
        for (int k = 0; k < nodes.length; k++) {
            double at = z + scale * nodes[k];
            double e = spread(sd * at);
            double log = -at * at / 2 + logWeights[k];
            for (int cell : pattern) {
                cells.look(cell, e);
                log += Math.log(cells.chance());
            }
            logs[k] = log;
            top = Math.max(top, log);
        }
        double sum = 0;
        for (int k = 0; k < nodes.length; k++) {
            logs[k] = Math.exp(logs[k] - top);
            sum += logs[k];
        }
        value += weight * (top + Math.log(sum * scale / Math.sqrt(2 * Math.PI)));
        double[] mean = new double[size];
        for (int k = 0; k < nodes.length; k++) {
            double share = logs[k] / sum;
            if (share < 1e-18) {
                continue;
            }
            double at = z + scale * nodes[k];
            double e = spread(sd * at);
            double[] score = scores[k];
            Arrays.fill(score, 0);
            for (int cell : pattern) {
                cells.look(cell, e);
                cells.add(cell, at, score, hessian, weight * share);
            }
            for (int i = 0; i < size; i++) {
                mean[i] += share * score[i];
            }
            for (int i = 0; i < size; i++) {
                double by = weight * share * score[i];
                for (int j = 0; by != 0 && j < size; j++) {
                    hessian[i][j] += by * score[j];
                }
            }
        }
        for (int i = 0; i < size; i++) {
            gradient[i] += weight * mean[i];
            for (int j = 0; j < size; j++) {
                hessian[i][j] -= weight * mean[i] * mean[j];
            }
        }
    }
}
