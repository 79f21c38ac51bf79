package levelback.scoring.proof;

import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import levelback.scoring.value.Estimate;

/**
 * Figures weighted by the known chance of being lifted, where sound-scoring cows were drawn at random.
 *
 * <p>Every lifted observation weighs one over its chance; ratios of weighted sums; variance linearised over cows with
 * C/(C-1); normal interval cut off at 0 and 1. Agrees with {@code svyratio} of R's survey 4.1-1.
 *
 * <p>Reference: Hájek (1971), comment in Godambe & Sprott, Foundations of Statistical Inference; Särndal, Swensson &
 * Wretman (1992), Model Assisted Survey Sampling, 5.7.
 */
final class ControlLifts {

    private static final String METHOD =
            "Hajek ratio weighted by one over the chance of the draw, variance clustered by cow";

    private ControlLifts() {}

    /** The weighted figures; empty where no lifted observation was drawn by chance. */
    static Optional<ProofResult.Weighted> of(List<Observation> lifted, double cut, double level) {
        if (lifted.stream().noneMatch(o -> o.chance() < 1)) {
            return Optional.empty();
        }
        ToDoubleFunction<Observation> lesion = o -> o.hasLesion() ? 1 : 0;
        ToDoubleFunction<Observation> positive = o -> o.score() >= cut ? 1 : 0;
        return Optional.of(new ProofResult.Weighted(
                ratio(lifted, positive, lesion, level, "no lifted cow had a lesion of the set"),
                ratio(
                        lifted,
                        o -> 1 - positive.applyAsDouble(o),
                        o -> 1 - lesion.applyAsDouble(o),
                        level,
                        "every lifted cow had a lesion of the set"),
                ratio(lifted, lesion, positive, level, "no lifted cow scored lame"),
                ratio(
                        lifted,
                        o -> 1 - lesion.applyAsDouble(o),
                        o -> 1 - positive.applyAsDouble(o),
                        level,
                        "no lifted cow scored sound"),
                ratio(lifted, lesion, o -> 1, level, "no cow was lifted"),
                lifted.stream()
                        .mapToDouble(o -> lesion.applyAsDouble(o) / o.chance())
                        .sum(),
                lifted.stream().mapToDouble(o -> 1 / o.chance()).sum()));
    }

    /** Weighted share that {@code is} among those that {@code count}. */
    private static Estimate ratio(
            List<Observation> lifted,
            ToDoubleFunction<Observation> is,
            ToDoubleFunction<Observation> count,
            double level,
            String nothing) {
        double top = 0;
        double bottom = 0;
        long n = 0;
        for (Observation o : lifted) {
            double counted = count.applyAsDouble(o);
            top += counted * is.applyAsDouble(o) / o.chance();
            bottom += counted / o.chance();
            n += counted > 0 ? 1 : 0;
        }
        if (n == 0) {
            return Estimate.missing(0, METHOD, nothing);
        }
        double value = Math.min(1, top / bottom);
        double squares = 0;
        long cows = 0;
        int i = 0;
        while (i < lifted.size()) {
            String cow = lifted.get(i).cow();
            double sum = 0;
            for (; i < lifted.size() && lifted.get(i).cow().equals(cow); i++) {
                Observation o = lifted.get(i);
                sum += count.applyAsDouble(o) * (is.applyAsDouble(o) - value) / o.chance();
            }
            squares += sum * sum;
            cows++;
        }
        if (cows < 2) {
            return Estimate.pointOnly(value, n, METHOD, "all of one cow: how cows differ cannot be told from one");
        }
        double standardError = Math.sqrt(squares * cows / (cows - 1.0)) / bottom;
        if (standardError <= 0) {
            return Estimate.pointOnly(value, n, METHOD, "none or all: no interval by this method");
        }
        double half = Proportions.normalQuantile(level) * standardError;
        return Estimate.of(value, Math.max(0, value - half), Math.min(1, value + half), n, METHOD);
    }
}
