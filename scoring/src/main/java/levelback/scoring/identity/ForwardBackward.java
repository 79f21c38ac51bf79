package levelback.scoring.identity;

import java.util.Arrays;

/**
 * The sums behind {@link Alignment}. A state before pass i is the set of reads in her window that passes before her have
 * taken, as bits from the window's first read. An inversion that pass i's read makes is with a read taken before that is
 * later, and every such read lies in her window, since windows never go back; so the state is all that is needed.
 */
final class ForwardBackward {

    /** A state this much lighter than the heaviest at the same pass is let go: no later pass makes up for as much. */
    private static final double NEGLIGIBLE = 1e-40;

    private static final double ROOT_TWO_PI = Math.sqrt(2 * Math.PI);

    private final int passes;
    private final double[] reads;
    private final AlignmentParameters with;
    private final int[] fixed;
    private final Windows windows;
    /** For each pass the weight of each read of her window; unread weighs {@code miss}. */
    private final double[][] weight;
    /** For each pass and read of her window how far to shift a state so that only strictly later reads are left. */
    private final int[][] later;

    private final double[] factor = new double[Alignment.MOST_READS + 1];

    ForwardBackward(double[] expected, double[] reads, AlignmentParameters with, int[] fixed, Windows windows) {
        this.passes = expected.length;
        this.reads = reads;
        this.with = with;
        this.fixed = fixed;
        this.windows = windows;
        this.weight = new double[passes][];
        this.later = new int[passes][];
        for (int n = 0; n < factor.length; n++) {
            factor[n] = n == 0 ? 1 : factor[n - 1] * with.inversionFactor();
        }
        for (int i = 0; i < passes; i++) {
            weigh(i, expected[i]);
        }
    }

    private void weigh(int pass, double expected) {
        int from = windows.from()[pass];
        int size = windows.size(pass);
        double[] ofRead = new double[size];
        int[] shifts = new int[size];
        double level = (1 - with.miss()) / (with.strayPerS() * with.sigmaS() * ROOT_TWO_PI);
        for (int j = 0; j < size; j++) {
            boolean open = fixed[pass] == Alignment.FREE || fixed[pass] == from + j;
            double z = (reads[from + j] - expected) / with.sigmaS();
            ofRead[j] = open ? level * Math.exp(-0.5 * z * z) : 0;
            int next = j + 1;
            while (next < size && reads[from + next] == reads[from + j]) {
                next++;
            }
            shifts[j] = next;
        }
        weight[pass] = ofRead;
        later[pass] = shifts;
    }

    /** A pass that a hand gave a read beyond her window has no read to take: she counts as unread. */
    private double unreadWeight(int pass) {
        boolean settled = fixed[pass] >= 0
                && fixed[pass] >= windows.from()[pass]
                && fixed[pass] < windows.to()[pass]
                && weight[pass][fixed[pass] - windows.from()[pass]] > 0;
        return settled ? 0 : with.miss();
    }

    Alignment run() {
        return run(true);
    }

    /** @param matching whether the likeliest matching is wanted too, which takes longer than the posteriors */
    Alignment run(boolean matching) {
        double[][] before = new double[passes][];
        double logScale = 0;
        double[] now = {1};
        int nowFrom = 0;
        for (int i = 0; i < passes; i++) {
            double[] in = shifted(now, windows.from()[i] - nowFrom, windows.size(i));
            logScale += Math.log(rescale(in));
            before[i] = in;
            now = forward(i, in);
            nowFrom = windows.from()[i];
        }
        double sum = 0;
        for (double w : now) {
            sum += w;
        }
        double logEvidence = logScale + Math.log(sum) + reads.length * Math.log(with.strayPerS());
        double[][] ofRead = new double[passes][];
        double[] unread = new double[passes];
        double[][] bestAfter = new double[passes][];
        backward(before, ofRead, unread);
        int[] likeliest = new int[matching ? passes : 0];
        double logLikeliest =
                matching ? likeliest(bestAfter, likeliest) + reads.length * Math.log(with.strayPerS()) : Double.NaN;
        return new Alignment(windows, ofRead, unread, likeliest, logLikeliest, logEvidence);
    }

    private static double[] shifted(double[] states, int by, int size) {
        double[] in = new double[1 << size];
        for (int s = 0; s < states.length; s++) {
            if (states[s] != 0) {
                in[by >= Integer.SIZE ? 0 : s >>> by] += states[s];
            }
        }
        return in;
    }

    /** Divides by the heaviest, drops what is negligible, and returns the divisor. */
    private static double rescale(double[] states) {
        double heaviest = 0;
        for (double w : states) {
            heaviest = Math.max(heaviest, w);
        }
        if (heaviest == 0) {
            return 1;
        }
        for (int s = 0; s < states.length; s++) {
            double w = states[s] / heaviest;
            states[s] = w < NEGLIGIBLE ? 0 : w;
        }
        return heaviest;
    }

    private double[] forward(int pass, double[] in) {
        double[] out = new double[in.length];
        double miss = unreadWeight(pass);
        double[] w = weight[pass];
        int[] shift = later[pass];
        for (int s = 0; s < in.length; s++) {
            double at = in[s];
            if (at == 0) {
                continue;
            }
            out[s] += at * miss;
            for (int j = 0; j < w.length; j++) {
                if ((s >>> j & 1) == 0 && w[j] != 0) {
                    out[s | 1 << j] += at * w[j] * factor[Integer.bitCount(s >>> shift[j])];
                }
            }
        }
        return out;
    }

    private void backward(double[][] before, double[][] ofRead, double[] unread) {
        double[] after = new double[passes == 0 ? 1 : 1 << windows.size(passes - 1)];
        Arrays.fill(after, 1);
        for (int i = passes - 1; i >= 0; i--) {
            double[] in = before[i];
            double[] w = weight[i];
            int[] shift = later[i];
            double miss = unreadWeight(i);
            double[] read = new double[w.length];
            double none = 0;
            double[] earlier = new double[in.length];
            for (int s = 0; s < in.length; s++) {
                if (in[s] == 0) {
                    continue;
                }
                double rest = miss * after[s];
                none += in[s] * rest;
                for (int j = 0; j < w.length; j++) {
                    if ((s >>> j & 1) == 0 && w[j] != 0) {
                        double on = w[j] * factor[Integer.bitCount(s >>> shift[j])] * after[s | 1 << j];
                        read[j] += in[s] * on;
                        rest += on;
                    }
                }
                earlier[s] = rest;
            }
            double all = none;
            for (double r : read) {
                all += r;
            }
            for (int j = 0; j < read.length; j++) {
                read[j] = all > 0 ? read[j] / all : 0;
            }
            ofRead[i] = read;
            unread[i] = all > 0 ? none / all : 1;
            after = i == 0 ? after : drawnBack(earlier, i);
        }
    }

    /** What is ahead of each state after the pass before, from what is ahead of the states before this one. */
    private double[] drawnBack(double[] ahead, int pass) {
        int by = windows.from()[pass] - windows.from()[pass - 1];
        double[] after = new double[1 << windows.size(pass - 1)];
        for (int s = 0; s < after.length; s++) {
            after[s] = ahead[by >= Integer.SIZE ? 0 : s >>> by];
        }
        rescale(after);
        return after;
    }

    /** Fills in the likeliest matching as a whole and returns the logarithm of its weight, stray reads left out. */
    private double likeliest(double[][] bestAfter, int[] likeliest) {
        for (int i = passes - 1; i >= 0; i--) {
            if (i == passes - 1) {
                bestAfter[i] = new double[1 << windows.size(i)];
                Arrays.fill(bestAfter[i], 1);
            }
            double[] best = new double[1 << windows.size(i)];
            for (int s = 0; s < best.length; s++) {
                best[s] = choice(i, s, bestAfter[i], new int[1]);
            }
            if (i > 0) {
                bestAfter[i - 1] = drawnBack(best, i);
            }
        }
        int state = 0;
        double log = 0;
        int[] chosen = new int[1];
        for (int i = 0; i < passes; i++) {
            int by = i == 0 ? 0 : windows.from()[i] - windows.from()[i - 1];
            state = by >= Integer.SIZE ? 0 : state >>> by;
            choice(i, state, bestAfter[i], chosen);
            if (chosen[0] < 0) {
                likeliest[i] = Alignment.UNREAD;
                log += Math.log(unreadWeight(i));
            } else {
                int j = chosen[0];
                likeliest[i] = windows.from()[i] + j;
                log += Math.log(weight[i][j] * factor[Integer.bitCount(state >>> later[i][j])]);
                state |= 1 << j;
            }
        }
        return log;
    }

    private double choice(int pass, int state, double[] after, int[] chosen) {
        double best = unreadWeight(pass) * after[state];
        chosen[0] = -1;
        double[] w = weight[pass];
        for (int j = 0; j < w.length; j++) {
            if ((state >>> j & 1) == 0 && w[j] != 0) {
                double on = w[j] * factor[Integer.bitCount(state >>> later[pass][j])] * after[state | 1 << j];
                if (on > best) {
                    best = on;
                    chosen[0] = j;
                }
            }
        }
        return best;
    }
}
