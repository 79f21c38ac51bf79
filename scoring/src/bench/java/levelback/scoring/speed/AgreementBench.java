package levelback.scoring.speed;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import levelback.scoring.agreement.Agreement;
import levelback.scoring.agreement.AgreementQuestion;
import levelback.scoring.agreement.AgreementResult;
import levelback.scoring.agreement.Rating;
import levelback.scoring.agreement.Ratings;
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

/** Every figure of agreement of 10 scorers on 100,000 clips, without resamples and without the latent scale. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
public class AgreementBench {

    private Ratings ratings = Ratings.of(List.of());

    /** Draws the panel and leaves it for R. */
    @Setup
    public void draw() {
        Panel panel = DrawnPanel.of(100_000, 10, 0.02, 11);
        List<Rating> rows = new ArrayList<>();
        for (int i = 0; i < panel.size(); i++) {
            rows.add(Rating.of(
                    panel.scorers().get(panel.scorer(i)), "clip-" + panel.clip(i), panel.value(i)));
        }
        ratings = Ratings.of(rows);
        BenchInput.write(AgreementBench.class, DrawnPanel.table(panel));
        AgreementResult result = agreement();
        AgreementResult.Pair pair = result.pairs().get(0);
        BenchInput.answer(
                AgreementBench.class,
                result.exactAgreement().value().orElseThrow(),
                result.fleissKappa().value().orElseThrow(),
                result.ac1().value().orElseThrow(),
                result.ac2Quadratic().value().orElseThrow(),
                result.alphaOrdinal().value().orElseThrow(),
                result.icc().agreement().value().orElseThrow(),
                pair.kappaQuadratic().value().orElseThrow(),
                pair.bias().value().orElseThrow());
    }

    /** All figures. */
    @Benchmark
    public AgreementResult agreement() {
        return Agreement.of(ratings, new AgreementQuestion(0.95, 1, 0, false));
    }
}
