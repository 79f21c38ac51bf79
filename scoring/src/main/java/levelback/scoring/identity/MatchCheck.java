package levelback.scoring.identity;

import java.util.Arrays;
import java.util.SplittableRandom;

/**
 * Are the reads of these passes at all? With a free clock any two rows of walkers fit somehow, since both come every few
 * seconds. So where the fit is not plainly good, the same reads are fitted to passes that never were: the same gaps
 * between walkers in another order, {@value #DECOYS} times. Reads of another milking fit the true passes no better than
 * those; reads of this milking fit them better by several standard deviations.
 *
 * <p>Own test (a permutation test, read as a z score); that it keeps the one and refuses the other is held by
 * simulation.
 */
final class MatchCheck {

    /** What the reads say. */
    enum Verdict {
        OF_THESE_PASSES,
        CANNOT_TELL,
        OF_OTHERS
    }

    private static final int DECOYS = 8;
    /** A gain this large for each pass comes about by chance only where passes are very few. */
    private static final double PLAINLY_GOOD = 0.6;

    private static final int FEW = 12;
    private static final int ENOUGH = 200;
    private static final double LEAST_Z = 3;
    private static final double LEAST_SPREAD = 1.5;

    private MatchCheck() {}

    static Verdict of(ClockFit fit, double[] passes, double[] reads) {
        boolean few = passes.length < FEW;
        if (fit.logGain() < 0) {
            return few && fit.logGain() > -LEAST_Z && passes.length <= 2 ? Verdict.CANNOT_TELL : Verdict.OF_OTHERS;
        }
        if (!few && fit.logGain() > PLAINLY_GOOD * passes.length) {
            return Verdict.OF_THESE_PASSES;
        }
        double[] part = Arrays.copyOf(passes, Math.min(passes.length, ENOUGH));
        double own = gain(part, reads);
        SplittableRandom random = new SplittableRandom(1);
        double sum = 0;
        double squares = 0;
        for (int d = 0; d < DECOYS; d++) {
            double gain = gain(inAnotherOrder(part, random), reads);
            sum += gain;
            squares += gain * gain;
        }
        double mean = sum / DECOYS;
        double spread = Math.sqrt(Math.max(0, (squares - DECOYS * mean * mean) / (DECOYS - 1)));
        if (own > mean + LEAST_Z * Math.max(spread, LEAST_SPREAD)) {
            return Verdict.OF_THESE_PASSES;
        }
        return few ? Verdict.CANNOT_TELL : Verdict.OF_OTHERS;
    }

    private static double gain(double[] passes, double[] reads) {
        int[] free = new int[passes.length];
        Arrays.fill(free, Alignment.FREE);
        return ClockFit.quick(passes, reads, free, passes.length)
                .map(ClockFit::logGain)
                .orElse(0.0);
    }

    private static double[] inAnotherOrder(double[] passes, SplittableRandom random) {
        double[] gaps = new double[passes.length - 1];
        for (int i = 0; i < gaps.length; i++) {
            gaps[i] = passes[i + 1] - passes[i];
        }
        for (int i = gaps.length - 1; i > 0; i--) {
            int j = random.nextInt(i + 1);
            double gap = gaps[i];
            gaps[i] = gaps[j];
            gaps[j] = gap;
        }
        double[] other = new double[passes.length];
        other[0] = passes[0];
        for (int i = 0; i < gaps.length; i++) {
            other[i + 1] = other[i] + gaps[i];
        }
        return other;
    }
}
