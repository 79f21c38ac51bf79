package levelback.scoring.identity;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * Where a reader's clock may stand: the differences read minus pass that come up most often, over every pair of a pass
 * with a read up to {@value #RANGE_S} s apart (a clock an hour off, a zone off, on the wrong half of the day).
 *
 * <p>At the true offset each pass that was read adds one difference, elsewhere the pairs spread out, so the true offset
 * stands out unless the walkers keep a strict beat; then the neighbouring beats stand out too, and which one it is, is
 * left to the alignments.
 */
final class ClockSearch {

    /** 14 hours. */
    static final double RANGE_S = 50_400;
    /** Offsets nearer to zero than this are always looked at too: most clocks are nearly right. */
    static final double NEAR_S = 150;

    private static final double BIN_S = 0.5;

    private record Peak(double offsetS, double count) {}

    private ClockSearch() {}

    /** Offsets worth trying, the most frequent first; none where no pair is within range. */
    static List<Double> candidates(double[] passes, double[] reads, int most) {
        int half = (int) (RANGE_S / BIN_S);
        int[] counts = new int[2 * half + 1];
        boolean any = false;
        int low = 0;
        for (double pass : passes) {
            while (low < reads.length && reads[low] < pass - RANGE_S) {
                low++;
            }
            for (int j = low; j < reads.length && reads[j] <= pass + RANGE_S; j++) {
                counts[half + (int) Math.rint((reads[j] - pass) / BIN_S)]++;
                any = true;
            }
        }
        if (!any) {
            return List.of();
        }
        List<Double> found = new ArrayList<>();
        // Two widths: a steady gate gives a sharp peak, a slow one a broad one.
        for (int reach : new int[] {2, 6}) {
            double[] smooth = smoothed(counts, reach);
            take(found, peaks(smooth, half, RANGE_S), most, 2 * reach * BIN_S);
            take(found, peaks(smooth, half, NEAR_S), most / 2, 2 * reach * BIN_S);
        }
        return found;
    }

    /** Weighted sums over neighbours, the nearer the heavier, so that a peak lies in the middle of its differences. */
    private static double[] smoothed(int[] counts, int reach) {
        double[] once = boxed(Arrays.stream(counts).asDoubleStream().toArray(), reach);
        return boxed(once, reach);
    }

    private static double[] boxed(double[] values, int reach) {
        double[] sums = new double[values.length];
        double running = 0;
        for (int b = -reach; b < values.length; b++) {
            if (b + reach < values.length) {
                running += values[b + reach];
            }
            if (b - reach - 1 >= 0) {
                running -= values[b - reach - 1];
            }
            if (b >= 0) {
                sums[b] = running / (2 * reach + 1);
            }
        }
        return sums;
    }

    private static List<Peak> peaks(double[] smooth, int half, double within) {
        List<Peak> peaks = new ArrayList<>();
        for (int b = 0; b < smooth.length; b++) {
            double offset = (b - half) * BIN_S;
            if (Math.abs(offset) <= within
                    && smooth[b] > 1e-9
                    && (b == 0 || smooth[b] >= smooth[b - 1])
                    && (b == smooth.length - 1 || smooth[b] > smooth[b + 1])) {
                peaks.add(new Peak(offset, smooth[b]));
            }
        }
        // Of equal peaks the one nearest to a right clock comes first.
        peaks.sort(Comparator.comparingDouble((Peak p) -> -p.count()).thenComparingDouble(p -> Math.abs(p.offsetS())));
        return peaks;
    }

    private static void take(List<Double> found, List<Peak> peaks, int most, double apartS) {
        int taken = 0;
        for (Peak peak : peaks) {
            if (taken == most) {
                return;
            }
            if (found.stream().noneMatch(o -> Math.abs(o - peak.offsetS()) < apartS)) {
                found.add(peak.offsetS());
                taken++;
            }
        }
    }
}
