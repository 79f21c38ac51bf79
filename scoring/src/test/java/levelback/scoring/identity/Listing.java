package levelback.scoring.identity;

import java.util.Arrays;

/** The posteriors by listing every partial matching: the definition itself, for small cases. */
final class Listing {

    private final double[] passes;
    private final double[] reads;
    private final AlignmentParameters with;
    final double[][] ofRead;
    final double[] unread;
    final int[] likeliest;
    double total;
    double heaviest = -1;

    Listing(double[] passes, double[] reads, AlignmentParameters with) {
        this.passes = passes;
        this.reads = reads;
        this.with = with;
        ofRead = new double[passes.length][reads.length];
        unread = new double[passes.length];
        likeliest = new int[passes.length];
        list(0, new int[passes.length]);
        for (int i = 0; i < passes.length; i++) {
            unread[i] /= total;
            for (int j = 0; j < reads.length; j++) {
                ofRead[i][j] /= total;
            }
        }
    }

    private void list(int pass, int[] matched) {
        if (pass == passes.length) {
            count(matched);
            return;
        }
        matched[pass] = Alignment.UNREAD;
        list(pass + 1, matched);
        for (int j = 0; j < reads.length; j++) {
            int read = j;
            if (Arrays.stream(matched, 0, pass).noneMatch(other -> other == read)) {
                matched[pass] = j;
                list(pass + 1, matched);
            }
        }
    }

    private void count(int[] matched) {
        double weight = 1;
        int taken = 0;
        for (int i = 0; i < passes.length; i++) {
            if (matched[i] < 0) {
                weight *= with.miss();
                continue;
            }
            taken++;
            double expected = passes[i] + with.offsetS() + with.drift() * (passes[i] - passes[0]);
            double z = (reads[matched[i]] - expected) / with.sigmaS();
            weight *= (1 - with.miss()) * Math.exp(-z * z / 2) / (with.sigmaS() * Math.sqrt(2 * Math.PI));
            for (int k = 0; k < i; k++) {
                if (matched[k] >= 0 && reads[matched[k]] > reads[matched[i]]) {
                    weight *= with.inversionFactor();
                }
            }
        }
        weight *= Math.pow(with.strayPerS(), reads.length - taken);
        total += weight;
        if (weight > heaviest) {
            heaviest = weight;
            System.arraycopy(matched, 0, likeliest, 0, matched.length);
        }
        for (int i = 0; i < passes.length; i++) {
            if (matched[i] < 0) {
                unread[i] += weight;
            } else {
                ofRead[i][matched[i]] += weight;
            }
        }
    }
}
