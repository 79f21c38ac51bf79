package levelback.scoring.agreement;

import java.util.OptionalDouble;

/**
 * Krippendorff's alpha: 1 − observed ÷ expected disagreement, from coincidences of pairable scores: on a clip with r
 * scores each of the r(r − 1) ordered pairs weighs 1 ÷ (r − 1). Ordinal distances come from the scores' own margins.
 *
 * <p>Reference: Krippendorff 2011, Computing Krippendorff's Alpha-Reliability (repository.upenn.edu/asc_papers/43).
 */
final class Alpha {

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
    OptionalDouble value(double[] clips) {
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
        double[] place = places(margin);
        double observed = 0;
        double expected = 0;
        for (int i = 0; i < q; i++) {
            for (int j = 0; j < q; j++) {
                double apart = metric == Metric.NOMINAL ? (i == j ? 0 : 1) : place[i] - place[j];
                observed += pairs[i][j] * apart * apart;
                expected += margin[i] * margin[j] * apart * apart;
            }
        }
        // As (n − 1) · observed ÷ expected nothing is divided twice.
        return expected > 0 ? OptionalDouble.of(1 - (n - 1) * observed / expected) : OptionalDouble.empty();
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
}
