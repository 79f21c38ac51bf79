package levelback.clips.drawn;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * Everything a drawn recording is made from; the same plan gives the same bytes.
 *
 * @param name file name without ending: letters, digits, dots, dashes, underscores
 * @param seed seed of the lane and of the camera's noise
 * @param camera where the camera stands
 * @param rate frames a second
 * @param lengthS length in seconds
 * @param walks who walks past, in order of entering
 * @param startedAt when frame 0 was taken, by the camera's clock
 * @param gate what the reader at the gate wrote; empty where there was none
 */
public record RecordingPlan(
        String name,
        long seed,
        CameraPlan camera,
        FrameRate rate,
        double lengthS,
        List<WalkPlan> walks,
        Instant startedAt,
        Optional<GateClock> gate) {

    /**
     * Reads at the gate, for the truth's {@code reads.csv}.
     *
     * @param offsetS reader's clock less the camera's at the first pass, in seconds
     * @param driftPpm how fast it gains, in parts per million
     * @param reads in the order written
     */
    public record GateClock(double offsetS, double driftPpm, List<Read> reads) {
        public GateClock {
            reads = List.copyOf(reads);
        }
    }

    /**
     * One line of the reader.
     *
     * @param at by the reader's clock
     * @param tag transponder
     * @param cowNumber whose it is
     * @param mark {@code ok}, {@code again}, {@code swapped} or {@code missed}
     */
    public record Read(Instant at, String tag, String cowNumber, String mark) {}

    /** @throws IllegalArgumentException if the name is no plain file name, or the length is out of 0.2 s to 2 h */
    public RecordingPlan {
        Objects.requireNonNull(camera, "camera");
        Objects.requireNonNull(rate, "rate");
        Objects.requireNonNull(startedAt, "startedAt");
        if (!name.matches("[A-Za-z0-9][A-Za-z0-9._-]*")) {
            throw new IllegalArgumentException("not a plain file name: " + name);
        }
        if (!(lengthS >= 0.2 && lengthS <= 7200)) {
            throw new IllegalArgumentException("lengthS must be 0.2 to 7200: " + lengthS);
        }
        walks = List.copyOf(walks);
    }

    /** How many frames it has. */
    public int frameCount() {
        return Math.max(1, (int) Math.round(lengthS * rate.perSecond()));
    }

    /** The same plan with what the reader wrote. */
    public RecordingPlan withGate(GateClock clock) {
        return new RecordingPlan(name, seed, camera, rate, lengthS, walks, startedAt, Optional.of(clock));
    }
}
