package levelback.clips.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import levelback.clips.open.ClipException;
import org.junit.jupiter.api.Test;

class StepBenchTest {

    private static Path film() throws Exception {
        return Path.of(StepBenchTest.class.getResource("/corpus/h264-one.mp4").toURI());
    }

    @Test
    void evenAFilmOfOneFrameIsMeasured() throws Exception {
        List<Double> done = new ArrayList<>();
        StepResult result = new StepBench(film(), () -> false, (stage, fraction) -> done.add(fraction)).run();
        assertThat(done).isSorted().endsWith(1.0);
        assertThat(result.frameDecodeMs()).isPositive();
        assertThat(result.decodeFps()).isEqualTo(1000 / result.frameDecodeMs());
        assertThat(result.stepBackMs().p50())
                .isLessThanOrEqualTo(result.stepBackMs().p95());
        assertThat(result.stepBackMs().p95())
                .isLessThanOrEqualTo(result.stepBackMs().max());
        assertThat(result.playDropped()).isBetween(0, result.played());
        assertThat(result.peakMemoryMb()).isPositive();
    }

    @Test
    void stopsWhenAsked() {
        ClipException stopped = catchThrowableOfType(
                ClipException.class, () -> new StepBench(film(), () -> true, (stage, fraction) -> {}).run());
        assertThat(stopped.reason()).isEqualTo(ClipException.Reason.CANCELLED);
    }

    @Test
    void percentilesAreByNearestRank() {
        // 1 to 20 ms: half of them are within 10, nineteen of twenty within 19.
        long[] nanos = new long[20];
        for (int i = 0; i < 20; i++) {
            nanos[i] = (20 - i) * 1_000_000L;
        }
        assertThat(Spread.ofNanos(nanos)).isEqualTo(new Spread(10, 19, 20));
        assertThat(Spread.ofNanos(5_000_000)).isEqualTo(new Spread(5, 5, 5));
    }
}
