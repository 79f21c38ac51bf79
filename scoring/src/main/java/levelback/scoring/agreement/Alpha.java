package levelback.scoring.agreement;

import java.util.OptionalDouble;

/**
 * Krippendorff's alpha: 1 − observed ÷ expected disagreement, from coincidences of pairable scores: on a clip with r
 * scores each of the r(r − 1) ordered pairs weighs 1 ÷ (r − 1). Ordinal distances come from the scores' own margins.
 *
 * <p>Reference: Krippendorff 2011, Computing Krippendorff's Alpha-Reliability (repository.upenn.edu/asc_papers/43).
 */
final class Alpha implements Resamples.Statistic {

    /** How far apart two levels are. */
    enum Metric {
        NOMINAL,
        ORDINAL,
        INTERVAL
    }

    private final LevelCounts counts;
    private final double[] levels;
    private final Metric metric;

    Alpha(LevelCounts counts, double[] levels, Metric metric) {
        this.counts = counts;
        this.levels = levels;
        this.metric = metric;
    }

    /**
     * Alpha where clips of each kind count so many times; empty where no two different levels are compared.
     *
     * @param clips as {@link LevelCounts#clips()}, or a resample of it
     */
    @Override
    public OptionalDouble value(double[] clips) {
        Disagreement d = disagreement(clips);
        // As (n − 1) · observed ÷ expected nothing is divided twice.
        return d.expected > 0 ? OptionalDouble.of(1 - (d.n - 1) * d.observed / d.expected) : OptionalDouble.empty();
    }

    /**
     * The derivative of alpha by the number of clips of each kind, through the coincidences and, for ordinal distances,
     * through the places of the levels, which the margins make.
     */
    @Override
    public double[] influence(double[] clips) {
        Disagreement d = disagreement(clips);
        int q = levels.length;
        double[] observedBy = new double[q];
        double[] expectedBy = new double[q];
        double[] observedPull = new double[q];
        double[] expectedPull = new double[q];
        for (int i = 0; i < q; i++) {
            for (int j = 0; j < q; j++) {
                expectedBy[i] += 2 * d.margin[j] * apart(d, i, j);
                observedPull[i] += 4 * d.pairs[i][j] * (d.place[i] - d.place[j]);
                expectedPull[i] += 4 * d.margin[i] * d.margin[j] * (d.place[i] - d.place[j]);
            }
        }
        if (metric == Metric.ORDINAL) {
            double observedAbove = 0;
            double expectedAbove = 0;
            for (int i = q - 1; i >= 0; i--) {
                observedBy[i] += observedAbove + observedPull[i] / 2;
                expectedBy[i] += expectedAbove + expectedPull[i] / 2;
                observedAbove += observedPull[i];
                expectedAbove += expectedPull[i];
            }
        }
        double[] influence = new double[clips.length];
        for (int k = 0; k < clips.length; k++) {
            int scores = counts.scores(k);
            if (scores < 2) {
                continue;
            }
            int[] r = counts.counts(k);
            double observed = 0;
            double expected = 0;
            for (int i = 0; i < q; i++) {
                if (r[i] > 0) {
                    observed += r[i] * observedBy[i];
                    expected += r[i] * expectedBy[i];
                    for (int j = 0; j < q; j++) {
                        observed += (double) r[i] * r[j] * apart(d, i, j) / (scores - 1);
                    }
                }
            }
            influence[k] = -(scores * d.observed + (d.n - 1) * observed) / d.expected
                    + (d.n - 1) * d.observed * expected / (d.expected * d.expected);
        }
        return influence;
    }

    private double apart(Disagreement d, int i, int j) {
        double apart = metric == Metric.NOMINAL ? (i == j ? 0 : 1) : d.place[i] - d.place[j];
        return apart * apart;
    }

    private Disagreement disagreement(double[] clips) {
        int q = levels.length;
        double[][] pairs = new double[q][q];
        for (int k = 0; k < clips.length; k++) {
            int scores = counts.scores(k);
            if (scores < 2 || clips[k] == 0) {
                continue;
            }
            int[] r = counts.counts(k);
            double weight = clips[k] / (scores - 1);
            for (int i = 0; i < q; i++) {
                if (r[i] > 0) {
                    for (int j = 0; j < q; j++) {
                        pairs[i][j] += weight * r[i] * (i == j ? r[i] - 1 : r[j]);
                    }
                }
            }
        }
        double[] margin = new double[q];
        double n = 0;
        for (int i = 0; i < q; i++) {
            for (int j = 0; j < q; j++) {
                margin[i] += pairs[i][j];
            }
            n += margin[i];
        }
        Disagreement d = new Disagreement(pairs, margin, n, places(margin));
        for (int i = 0; i < q; i++) {
            for (int j = 0; j < q; j++) {
                d.observed += pairs[i][j] * apart(d, i, j);
                d.expected += margin[i] * margin[j] * apart(d, i, j);
            }
        }
        return d;
    }

    private double[] places(double[] margin) {
        if (metric != Metric.ORDINAL) {
            return levels;
        }
        double[] places = new double[margin.length];
        double below = 0;
        for (int i = 0; i < margin.length; i++) {
            places[i] = below + margin[i] / 2;
            below += margin[i];
        }
        return places;
    }

    /** Coincidences of a set of clips, and what they say. */
    private static final class Disagreement {
        private final double[][] pairs;
        private final double[] margin;
        private final double n;
        private final double[] place;
        private double observed;
        private double expected;

        Disagreement(double[][] pairs, double[] margin, double n, double[] place) {
            this.pairs = pairs;
            this.margin = margin;
            this.n = n;
            this.place = place;
        }
    }
}
