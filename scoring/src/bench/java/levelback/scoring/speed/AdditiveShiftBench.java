package levelback.scoring.speed;

import java.util.List;
import java.util.concurrent.TimeUnit;
import levelback.scoring.severity.AdditiveShift;
import levelback.scoring.severity.Panel;
import levelback.scoring.value.Estimate;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** The additive shift of 10 scorers on 100,000 clips. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
public class AdditiveShiftBench {

    private Panel panel = DrawnPanel.empty();

    /** Draws the panel and leaves it for R. */
    @Setup
    public void draw() {
        panel = DrawnPanel.of(100_000, 10, 0.1, 7);
        BenchInput.write(AdditiveShiftBench.class, DrawnPanel.table(panel));
        BenchInput.answer(
                AdditiveShiftBench.class,
                AdditiveShift.of(panel, 0.95).stream()
                        .mapToDouble(shift -> shift.value().orElseThrow())
                        .toArray());
    }

    /** The fit. */
    @Benchmark
    public List<Estimate> shift() {
        return AdditiveShift.of(panel, 0.95);
    }
}
