package levelback.scoring.identity;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What was said against what was true, over simulated milkings. */
final class Reliability {

    private static final int TENTHS = 10;

    private final long[] calls = new long[TENTHS + 1];
    private final long[] right = new long[TENTHS + 1];
    private final double[] said = new double[TENTHS + 1];
    private final long[] tagCalls = new long[TENTHS + 1];
    private final long[] tagRight = new long[TENTHS + 1];
    private long committed;
    private long committedRight;
    private long withRead;
    private long withReadLeft;
    private long unread;
    private long unreadCommitted;
    private final List<Double> offsets = new ArrayList<>();
    private final List<Double> drifts = new ArrayList<>();
    private final List<Double> factors = new ArrayList<>();
    private final List<Double> exchanges = new ArrayList<>();
    private int unmatched;

    void add(Milking milking, Milking.Setting setting, Identification result) {
        if (result.clock().isEmpty()) {
            unmatched++;
            return;
        }
        // The first pass is the clock's zero; the simulation counts drift from its start.
        double t0 = (milking.passes().get(0).from().toEpochMilli()
                                + milking.passes().get(0).to().toEpochMilli())
                        / 2e3
                - java.time.Instant.parse("2026-03-14T05:30:00Z").getEpochSecond();
        offsets.add(result.clock().get().offsetS() - setting.offsetS() - setting.driftPpm() * 1e-6 * t0);
        drifts.add(result.clock().get().driftPpm() - setting.driftPpm());
        factors.add(result.clock().get().with().inversionFactor());
        exchanges.add(result.clock().get().exchange());
        for (int i = 0; i < milking.truth().size(); i++) {
            Optional<String> truth = milking.truth().get(i);
            Identification.PassIdentity who = result.passes().get(i);
            boolean same = who.tag().equals(truth);
            int bin = (int) Math.floor(who.probability() * TENTHS + .5);
            calls[bin]++;
            said[bin] += who.probability();
            right[bin] += same ? 1 : 0;
            if (who.tag().isPresent()) {
                tagCalls[bin]++;
                tagRight[bin] += same ? 1 : 0;
            }
            if (who.committed()) {
                committed++;
                committedRight += same ? 1 : 0;
            }
            if (truth.isPresent()) {
                withRead++;
                withReadLeft += who.committed() ? 0 : 1;
            } else {
                unread++;
                unreadCommitted += who.committed() && who.tag().isEmpty() ? 1 : 0;
            }
        }
    }

    double committedRight() {
        return (double) committedRight / committed;
    }

    double withReadLeft() {
        return (double) withReadLeft / withRead;
    }

    double unreadCommitted() {
        return (double) unreadCommitted / unread;
    }

    long calls(int tenth) {
        return calls[tenth];
    }

    double right(int tenth) {
        return (double) right[tenth] / calls[tenth];
    }

    double said(int tenth) {
        return said[tenth] / calls[tenth];
    }

    double worstOffsetS() {
        return offsets.stream().mapToDouble(Math::abs).max().orElse(Double.NaN);
    }

    double worstDriftPpm() {
        return drifts.stream().mapToDouble(Math::abs).max().orElse(Double.NaN);
    }

    double meanDriftErrorPpm() {
        return mean(drifts);
    }

    int unmatched() {
        return unmatched;
    }

    private static double mean(List<Double> values) {
        return values.stream().mapToDouble(d -> d).average().orElse(Double.NaN);
    }

    String table() {
        StringBuilder out = new StringBuilder();
        out.append(String.format(
                Locale.ROOT,
                "  committed right %.4f of %d; with a read left %.4f; unread committed %.3f of %d; worst clock %.2f s,"
                        + " %.0f ppm; no clock %d;"
                        + " mean inversion factor %.3f, exchange %.4f%n",
                committedRight(),
                committed,
                withReadLeft(),
                unreadCommitted(),
                unread,
                worstOffsetS(),
                worstDriftPpm(),
                unmatched,
                mean(factors),
                mean(exchanges)));
        for (int b = 0; b <= TENTHS; b++) {
            if (calls[b] > 0) {
                out.append(String.format(
                        Locale.ROOT,
                        "  called %.1f: n %6d, said %.3f, right %.3f; tags n %6d right %.3f%n",
                        b / 10.0,
                        calls[b],
                        said(b),
                        right(b),
                        tagCalls[b],
                        (double) tagRight[b] / tagCalls[b]));
            }
        }
        return out.toString();
    }
}
