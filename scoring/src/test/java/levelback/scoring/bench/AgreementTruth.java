package levelback.scoring.bench;

import java.util.HashMap;
import java.util.Map;

/**
 * What the figures of agreement converge to over clips without end, for scorers that follow the cumulative-logit model: by
 * integration over the clips (2,001 points to 8 standard deviations), scorers fixed, cells missing by luck alone.
 */
final class AgreementTruth {

    private static final int POINTS = 2_001;

    private final int levels;
    private final int scorers;
    /** Chance that s gives i and t gives j to one clip. */
    private final double[][][][] joint;

    private final double[][] margin;

    AgreementTruth(double[] thresholds, double[] shifts, double clipSd) {
        levels = thresholds.length + 1;
        scorers = shifts.length;
        joint = new double[scorers][scorers][levels][levels];
        margin = new double[scorers][levels];
        double all = 0;
        for (int k = 0; k < POINTS; k++) {
            double z = -8 + 16.0 * k / (POINTS - 1);
            double weight = Math.exp(-z * z / 2);
            all += weight;
            double[][] p = new double[scorers][];
            for (int s = 0; s < scorers; s++) {
                p[s] = chances(thresholds, shifts[s] + clipSd * z);
            }
            for (int s = 0; s < scorers; s++) {
                for (int i = 0; i < levels; i++) {
                    margin[s][i] += weight * p[s][i];
                    for (int t = 0; t < scorers; t++) {
                        for (int j = 0; j < levels; j++) {
                            joint[s][t][i][j] += weight * p[s][i] * p[t][j];
                        }
                    }
                }
            }
        }
        for (int s = 0; s < scorers; s++) {
            for (int i = 0; i < levels; i++) {
                margin[s][i] /= all;
                for (int t = 0; t < scorers; t++) {
                    for (int j = 0; j < levels; j++) {
                        joint[s][t][i][j] /= all;
                    }
                }
            }
        }
    }

    private static double[] chances(double[] thresholds, double at) {
        double[] p = new double[thresholds.length + 1];
        double below = 0;
        for (int j = 0; j < p.length; j++) {
            double upTo = j < thresholds.length ? 1 / (1 + Math.exp(at - thresholds[j])) : 1;
            p[j] = upTo - below;
            below = upTo;
        }
        return p;
    }

    private interface OfLevels {
        double of(int i, int j);
    }

    /** Mean over the pairs of different scorers. */
    private double pairs(OfLevels f) {
        double sum = 0;
        for (int s = 0; s < scorers; s++) {
            for (int t = 0; t < scorers; t++) {
                for (int i = 0; s != t && i < levels; i++) {
                    for (int j = 0; j < levels; j++) {
                        sum += joint[s][t][i][j] * f.of(i, j);
                    }
                }
            }
        }
        return sum / scorers / (scorers - 1);
    }

    private double weight(int kind, int i, int j) {
        double apart = Math.abs(i - j) / (levels - 1.0);
        return kind == 0 ? (i == j ? 1 : 0) : 1 - Math.pow(apart, kind);
    }

    Map<String, Double> all() {
        Map<String, Double> truths = new HashMap<>();
        truths.put("exactAgreement", pairs((i, j) -> i == j ? 1 : 0));
        truths.put("withinOne", pairs((i, j) -> Math.abs(i - j) <= 1 ? 1 : 0));
        double[] share = new double[levels];
        for (double[] of : margin) {
            for (int i = 0; i < levels; i++) {
                share[i] += of[i] / scorers;
            }
        }
        String[] ac = {"ac1", "ac2Linear", "ac2Quadratic"};
        String[] kappas = {"kappa", "kappaLinear", "kappaQuadratic"};
        for (int k = 0; k < 3; k++) {
            int kind = k;
            double pa = pairs((i, j) -> weight(kind, i, j));
            double weights = 0;
            double squares = 0;
            double expected = 0;
            double chance = 0;
            double observed = 0;
            for (int i = 0; i < levels; i++) {
                squares += share[i] * (1 - share[i]);
                for (int j = 0; j < levels; j++) {
                    weights += weight(k, i, j);
                    expected += weight(k, i, j) * share[i] * share[j];
                    chance += weight(k, i, j) * margin[0][i] * margin[1][j];
                    observed += weight(k, i, j) * joint[0][1][i][j];
                }
            }
            double pe = weights / (levels * (levels - 1.0)) * squares;
            truths.put(ac[k], (pa - pe) / (1 - pe));
            truths.put(kappas[k], (observed - chance) / (1 - chance));
            if (k == 0) {
                truths.put("fleissKappa", (pa - expected) / (1 - expected));
            }
        }
        double[] place = grades(share);
        truths.put("alphaNominal", alpha(share, (i, j) -> i == j ? 0 : 1));
        truths.put("alphaOrdinal", alpha(share, (i, j) -> Math.pow(place[i] - place[j], 2)));
        truths.put("alphaInterval", alpha(share, (i, j) -> (i - j) * (i - j)));
        concordance(truths);
        variances(truths);
        return truths;
    }

    private double alpha(double[] share, OfLevels apart) {
        double expected = 0;
        for (int i = 0; i < levels; i++) {
            for (int j = 0; j < levels; j++) {
                expected += share[i] * share[j] * apart.of(i, j);
            }
        }
        return 1 - pairs(apart) / expected;
    }

    private static double[] grades(double[] share) {
        double[] grade = new double[share.length];
        double below = 0;
        for (int i = 0; i < grade.length; i++) {
            grade[i] = below + share[i] / 2;
            below += share[i];
        }
        return grade;
    }

    private void concordance(Map<String, Double> truths) {
        double variance = 0;
        double cubes = 0;
        for (int s = 0; s < scorers; s++) {
            double[] mine = grades(margin[s]);
            for (int i = 0; i < levels; i++) {
                cubes += Math.pow(margin[s][i], 3);
                variance += margin[s][i] * Math.pow(mine[i] - .5, 2);
            }
            for (int t = 0; t < scorers; t++) {
                double[] hers = grades(margin[t]);
                for (int i = 0; s != t && i < levels; i++) {
                    for (int j = 0; j < levels; j++) {
                        variance += joint[s][t][i][j] * (mine[i] - .5) * (hers[j] - .5);
                    }
                }
            }
        }
        truths.put("kendallW", 12 * variance / ((double) scorers * scorers - scorers * cubes));
    }

    private void variances(Map<String, Double> truths) {
        double[] mean = new double[scorers];
        double grand = 0;
        for (int s = 0; s < scorers; s++) {
            for (int i = 0; i < levels; i++) {
                mean[s] += i * margin[s][i];
            }
            grand += mean[s] / scorers;
        }
        double trace = 0;
        double total = 0;
        double between = 0;
        for (int s = 0; s < scorers; s++) {
            between += Math.pow(mean[s] - grand, 2) / (scorers - 1);
            double own = 0;
            for (int i = 0; i < levels; i++) {
                own += margin[s][i] * Math.pow(i - mean[s], 2);
            }
            trace += own;
            total += own;
            for (int t = 0; t < scorers; t++) {
                for (int i = 0; s != t && i < levels; i++) {
                    for (int j = 0; j < levels; j++) {
                        total += joint[s][t][i][j] * (i - mean[s]) * (j - mean[t]);
                    }
                }
            }
        }
        int k = scorers;
        double clips = total / k;
        double error = (trace - clips) / (k - 1);
        double within = error + between;
        truths.put("icc.oneWay", (clips - within) / (clips + (k - 1) * within));
        truths.put("icc.agreement", (clips - error) / (clips + (k - 1) * error + k * between));
        truths.put("icc.consistency", (clips - error) / (clips + (k - 1) * error));
        truths.put("icc.oneWayAverage", (clips - within) / clips);
        truths.put("icc.agreementAverage", (clips - error) / (clips + between));
        truths.put("icc.consistencyAverage", (clips - error) / clips);
        truths.put("bias", mean[0] - mean[1]);
        truths.put("shift", mean[0] - grand);
    }
}
