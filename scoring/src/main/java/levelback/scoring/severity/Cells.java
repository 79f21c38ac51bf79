package levelback.scoring.severity;

/**
 * The chance of one score given the clip, {@code F(a) − F(b)} with {@code F} the logistic function, {@code a = θj − β − σz}, {@code b =
 * θj₋₁ − β − σz}, and its derivatives. Written in {@code exp(β − θ)}, which is worked out once, and {@code e = exp(σz)}, so that neither a
 * difference of almost equal numbers nor an exponential for each score is needed.
 */
final class Cells {

    private final int thresholds;
    private final int scorers;
    private final double sd;
    private final double[] exponential;

    private double chance;
    private double upper;
    private double lower;
    private double upperBend;
    private double lowerBend;

    Cells(double[] parameters, int thresholds, int scorers) {
        this.thresholds = thresholds;
        this.scorers = scorers;
        sd = parameters[thresholds + scorers];
        exponential = new double[scorers * thresholds];
        for (int s = 0; s < scorers; s++) {
            for (int j = 0; j < thresholds; j++) {
                exponential[s * thresholds + j] = Math.exp(parameters[thresholds + s] - parameters[j]);
            }
        }
    }

    double sd() {
        return sd;
    }

    /** Looks at a cell (scorer × levels + level) for a clip. */
    void look(int cell, double e) {
        int s = cell / (thresholds + 1);
        int level = cell % (thresholds + 1);
        boolean top = level == thresholds;
        boolean bottom = level == 0;
        double a = top ? 0 : e * exponential[s * thresholds + level];
        double b = bottom ? 0 : e * exponential[s * thresholds + level - 1];
        double fa = 1 / (1 + a);
        double notB = bottom ? 1 : b / (1 + b);
        if (bottom) {
            chance = fa;
            upper = a * fa;
            lower = 0;
        } else if (top) {
            chance = notB;
            upper = 0;
            lower = 1 - notB;
        } else {
            chance = (b - a) * fa / (1 + b);
            upper = a * (1 + b) * fa / (b - a);
            lower = b * (1 + a) / ((1 + b) * (b - a));
        }
        chance = Math.max(chance, Double.MIN_NORMAL);
        upperBend = upper * (1 - 2 * fa) - upper * upper;
        lowerBend = -lower * (1 - 2 * (1 - notB)) - lower * lower;
    }

    double chance() {
        return chance;
    }

    /** Of the log chance, by a move of both limits. */
    double slope() {
        return upper - lower;
    }

    double curvature() {
        return upperBend + lowerBend + 2 * upper * lower;
    }

    /** Adds the score to {@code score} and the weighted curvature to {@code hessian}. */
    void add(int cell, double z, double[] score, double[][] hessian, double weight) {
        int s = cell / (thresholds + 1);
        int level = cell % (thresholds + 1);
        int beta = thresholds + s;
        int spread = thresholds + scorers;
        double slope = slope();
        double both = weight * curvature();
        score[beta] -= slope;
        score[spread] -= slope * z;
        hessian[beta][beta] += both;
        hessian[beta][spread] += both * z;
        hessian[spread][beta] += both * z;
        hessian[spread][spread] += both * z * z;
        double cross = weight * upper * lower;
        if (level < thresholds) {
            score[level] += upper;
            limit(hessian, level, beta, spread, z, weight * upperBend, cross);
        }
        if (level > 0) {
            score[level - 1] -= lower;
            limit(hessian, level - 1, beta, spread, z, weight * lowerBend, cross);
        }
        if (level > 0 && level < thresholds) {
            hessian[level][level - 1] += cross;
            hessian[level - 1][level] += cross;
        }
    }

    private static void limit(
            double[][] hessian, int threshold, int beta, int spread, double z, double bend, double cross) {
        double moved = bend + cross;
        hessian[threshold][threshold] += bend;
        hessian[threshold][beta] -= moved;
        hessian[beta][threshold] -= moved;
        hessian[threshold][spread] -= moved * z;
        hessian[spread][threshold] -= moved * z;
    }
}
