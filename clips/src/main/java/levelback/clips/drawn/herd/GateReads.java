package levelback.clips.drawn.herd;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;

/**
 * What the reader at the gate wrote while the filmed cows walked past: its clock is off and drifts, it misses cows,
 * reads some twice, and swaps neighbours that crowd through.
 *
 * @param clockOffsetS reader's clock less the camera's at the first pass, in seconds
 * @param clockDriftPpm how fast the reader's clock gains on the camera's, in parts per million
 * @param reads in the order written
 * @param unread numbers of cows that walked through unread
 */
public record GateReads(double clockOffsetS, double clockDriftPpm, List<Read> reads, List<String> unread) {

    /** Chance that a walker goes unread. */
    static final double MISSED = 0.05;
    /** Chance that a tag is read a second time. */
    static final double DOUBLED = 0.08;
    /** Chance that a cow is read after the one behind her. */
    static final double SWAPPED = 0.05;

    private static final double GATE_DELAY_S = 0.4;

    /**
     * One line of the reader.
     *
     * @param at time by the reader's clock
     * @param cow number of the cow read
     * @param tag her transponder
     * @param mark {@code ok}, {@code again} or {@code swapped}
     */
    public record Read(Instant at, String cow, String tag, String mark) {}

    /**
     * A cow walking past.
     *
     * @param cow her number
     * @param middle when she is half way, by the camera's clock
     */
    public record Walk(String cow, Instant middle) {}

    public GateReads {
        reads = List.copyOf(reads);
        unread = List.copyOf(unread);
    }

    /** Reads of one milking, by seed. Walks in their order. */
    public static GateReads of(HerdPlan plan, int visit, List<Walk> walks) {
        Random draws = new Random(HerdLife.mixed(plan.seed(), 9_000 + visit));
        double offset = 12 * draws.nextGaussian();
        double drift = 25 * draws.nextGaussian();
        List<Read> reads = new ArrayList<>();
        List<String> unread = new ArrayList<>();
        List<Walk> order = new ArrayList<>(walks);
        boolean[] swapped = new boolean[order.size()];
        for (int i = 0; i + 1 < order.size(); i++) {
            if (draws.nextDouble() < SWAPPED && !swapped[i]) {
                Walk first = order.get(i);
                Walk second = order.get(i + 1);
                // They change places at the gate, not in front of the camera: only the reads are out of order.
                order.set(i, new Walk(second.cow(), first.middle()));
                order.set(i + 1, new Walk(first.cow(), second.middle()));
                swapped[i] = true;
                swapped[i + 1] = true;
            }
        }
        for (int i = 0; i < order.size(); i++) {
            Walk walk = order.get(i);
            boolean missed = draws.nextDouble() < MISSED;
            boolean again = draws.nextDouble() < DOUBLED;
            double late = GATE_DELAY_S * draws.nextGaussian();
            double laterStill = 0.8 + draws.nextDouble();
            if (missed) {
                unread.add(walk.cow());
                continue;
            }
            double sinceFirstS = millisBetween(order.get(0).middle(), walk.middle()) / 1e3;
            double shift = offset + drift * 1e-6 * sinceFirstS + late;
            String tag = plan.cow(walk.cow()).tag();
            Instant at = plusSeconds(walk.middle(), shift);
            reads.add(new Read(at, walk.cow(), tag, swapped[i] ? "swapped" : "ok"));
            if (again) {
                reads.add(new Read(plusSeconds(at, laterStill), walk.cow(), tag, "again"));
            }
        }
        reads.sort(Comparator.comparing(Read::at));
        return new GateReads(offset, drift, reads, unread);
    }

    private static double millisBetween(Instant from, Instant to) {
        return (double) (to.toEpochMilli() - from.toEpochMilli());
    }

    private static Instant plusSeconds(Instant at, double seconds) {
        return at.plusMillis(Math.round(seconds * 1000));
    }
}
