package levelback.scoring.speed;

import java.util.concurrent.TimeUnit;
import java.util.stream.DoubleStream;
import levelback.scoring.severity.CumulativeLinkModel;
import levelback.scoring.severity.LatentPanel;
import levelback.scoring.severity.Panel;
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

/** The latent severity of 5 scorers on 1,000 clips. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
public class LatentBench {

    private Panel panel = DrawnPanel.empty();

    /** Draws the panel and leaves it for R. */
    @Setup
    public void draw() {
        panel = DrawnPanel.of(1_000, 5, 0.1, 7);
        BenchInput.write(LatentBench.class, DrawnPanel.table(panel));
        LatentPanel fit = CumulativeLinkModel.fit(panel);
        BenchInput.answer(
                LatentBench.class,
                DoubleStream.concat(
                                fit.scorers().stream().mapToDouble(Double::doubleValue), DoubleStream.of(fit.clipSd()))
                        .toArray());
    }

    /** The fit. */
    @Benchmark
    public LatentPanel latent() {
        return CumulativeLinkModel.fit(panel);
    }
}
