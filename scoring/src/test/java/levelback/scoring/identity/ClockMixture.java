package levelback.scoring.identity;

import java.util.List;

/**
 * Alignments under several clocks that were equally likely before the data, weighed by how well each explains the data:
 * the posterior with the clock summed out.
 */
final class ClockMixture {

    private final List<Alignment> alignments;
    private final double[] weights;

    private ClockMixture(List<Alignment> alignments, double[] weights) {
        this.alignments = alignments;
        this.weights = weights;
    }

    /** Weighs alignments of the same passes and reads, at least one. */
    static ClockMixture of(List<Alignment> alignments) {
        double[] prior = new double[alignments.size()];
        return of(alignments, prior);
    }

    /** The same with a logarithm of the clock's weight before the data. */
    static ClockMixture of(List<Alignment> alignments, double[] logPrior) {
        double[] log = new double[alignments.size()];
        double most = Double.NEGATIVE_INFINITY;
        for (int o = 0; o < log.length; o++) {
            log[o] = alignments.get(o).logEvidence() + logPrior[o];
            most = Math.max(most, log[o]);
        }
        double sum = 0;
        for (int o = 0; o < log.length; o++) {
            log[o] = Math.exp(log[o] - most);
            sum += log[o];
        }
        for (int o = 0; o < log.length; o++) {
            log[o] /= sum;
        }
        return new ClockMixture(List.copyOf(alignments), log);
    }

    /** Posterior probability of a clock. */
    double weight(int clock) {
        return weights[clock];
    }

    /** Probability that the pass has no read. */
    double unread(int pass) {
        double p = 0;
        for (int o = 0; o < weights.length; o++) {
            p += weights[o] * alignments.get(o).unread(pass);
        }
        return p;
    }

    /** Probability that a read is of this pass. */
    double probability(int pass, int read) {
        double p = 0;
        for (int o = 0; o < weights.length; o++) {
            p += weights[o] * alignments.get(o).probability(pass, read);
        }
        return p;
    }
}
