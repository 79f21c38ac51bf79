package levelback.scoring.gait;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import levelback.scoring.value.Leg;

/**
 * When in the LH stride a foot comes down: (its first down at or after the LH down − LH down)/LH stride time, circular
 * mean over the LH strides that hold one.
 *
 * @param leg whose foot
 * @param phase in [0, 1); empty where no LH stride holds a down of the leg, or the downs point all ways alike
 * @param n LH strides that hold one
 * @param why what is missing
 */
public record FootPhase(Leg leg, OptionalDouble phase, long n, Optional<String> why) {

    static FootPhase of(Walk walk, List<StrideSpan> lh, Leg leg) {
        double[] downs =
                Arrays.stream(walk.downsOf(leg)).mapToDouble(walk::time).toArray();
        double sine = 0;
        double cosine = 0;
        int n = 0;
        for (StrideSpan stride : lh) {
            double from = walk.time(stride.down());
            int found = Arrays.binarySearch(downs, from);
            int at = found >= 0 ? found : -found - 1;
            if (at < downs.length && downs[at] < walk.time(stride.next())) {
                double angle = 2 * Math.PI * (downs[at] - from) / stride.timeS(walk);
                sine += Math.sin(angle);
                cosine += Math.cos(angle);
                n++;
            }
        }
        if (n == 0) {
            return new FootPhase(
                    leg, OptionalDouble.empty(), 0, Optional.of("no LH stride with a down of " + leg + " in it"));
        }
        if (Math.hypot(sine, cosine) < 1e-9 * n) {
            return new FootPhase(
                    leg,
                    OptionalDouble.empty(),
                    n,
                    Optional.of(leg + " comes down at all phases of the LH stride alike"));
        }
        double turn = Math.atan2(sine, cosine) / (2 * Math.PI);
        double phase = turn < 0 ? turn + 1 : turn;
        // A hair below nought is nought, not one.
        return new FootPhase(leg, OptionalDouble.of(phase > 1 - 1e-12 ? 0 : phase), n, Optional.empty());
    }
}
