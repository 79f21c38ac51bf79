package levelback.scoring.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.List;
import levelback.scoring.value.Estimate;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.junit.jupiter.api.Test;

/** The harness itself, on cases whose coverage is known. */
class CoverageTest {

    /**
     * Brown, Cai & DasGupta (2001), doi:10.1214/ss/1009213286: the Wald interval of p = .005 covers .792 at n = 592 where
     * 95 % is promised (printed value from memory; the exact binomial sum below gives the same three digits).
     */
    @Test
    void waldCoversAsPublished() {
        assertThat(exactWald(592, .005)).isCloseTo(.792, within(.0005));
        Coverage row = Coverage.wald(592, .005, 4_000);
        assertThat(row.share()).isCloseTo(.792, within(4 * row.standardError()));
        assertThat(row.missedLow()).isGreaterThan(10 * row.missedHigh());
    }

    /** At p = .05, n = 30 the binomial sum gives .7829: far below 95 %. */
    @Test
    void waldAtSmallNumbersCoversAsTheBinomialSumSays() {
        double exact = exactWald(30, .05);
        assertThat(exact).isLessThan(.8);
        Coverage row = Coverage.wald(30, .05, 4_000);
        assertThat(row.share()).isCloseTo(exact, within(4 * row.standardError()));
    }

    @Test
    void everyRunIsCountedOnceAndItsSeedIsItsOwn() {
        java.util.Set<Long> seeds = java.util.concurrent.ConcurrentHashMap.newKeySet();
        Coverage row = Coverage.of("some", "by the seed", 1_000, seed -> {
            seeds.add(seed);
            return switch ((int) Math.floorMod(seed, 4L)) {
                case 0 -> new Coverage.Run(5, Estimate.of(5, 4, 6, 1, "m"));
                case 1 -> new Coverage.Run(9, Estimate.of(5, 4, 6, 1, "m"));
                case 2 -> new Coverage.Run(1, Estimate.of(5, 4, 6, 1, "m"));
                default -> new Coverage.Run(1, Estimate.pointOnly(5, 1, "m", "none"));
            };
        });
        assertThat(seeds).hasSize(1_000);
        assertThat(row.covered() + row.missedLow() + row.missedHigh() + row.withoutInterval())
                .isEqualTo(1_000);
        assertThat(List.of(row.covered(), row.missedLow(), row.missedHigh(), row.withoutInterval()))
                .allMatch(count -> count > 150);
        assertThat(row.meanWidth()).isCloseTo(2, within(1e-12));
    }

    @Test
    void printsAMarkdownTable() {
        StringWriter text = new StringWriter();
        Coverage.print(new PrintWriter(text), List.of(new Coverage("Wilson", "n 50", 2_000, 1_900, 40, 50, 10, .25)));
        assertThat(text.toString().lines().toList())
                .last()
                .isEqualTo("| Wilson | n 50 | 2000 | 95.5 ± 0.5 | 2.0 | 2.5 | 10 | 0.2500 |");
    }

    private static double exactWald(int n, double p) {
        BinomialDistribution binomial = BinomialDistribution.of(n, p);
        double covered = 0;
        for (int x = 0; x <= n; x++) {
            double share = (double) x / n;
            double half = 1.959963984540054 * Math.sqrt(share * (1 - share) / n);
            covered += Math.abs(share - p) <= half ? binomial.probability(x) : 0;
        }
        return covered;
    }
}
