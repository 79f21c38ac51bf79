package levelback.scoring.agreement;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * Do two scorers use the levels equally often?
 *
 * @param statistic chi-squared; empty where the table cannot carry the test
 * @param degreesOfFreedom empty where there is no statistic
 * @param pValue how often a larger one comes by chance; empty where there is nothing to test
 * @param why what is missing, where something is
 */
public record MarginTest(
        OptionalDouble statistic, OptionalInt degreesOfFreedom, OptionalDouble pValue, Optional<String> why) {

    private static final String SINGULAR = "the two agree throughout on some levels: the test has nothing to weigh";

    /** Bowker 1948 doi:10.1080/01621459.1948.10483284: is the table symmetric? */
    static MarginTest bowker(long[][] counts) {
        double statistic = 0;
        int pairs = 0;
        for (int i = 0; i < counts.length; i++) {
            for (int j = 0; j < i; j++) {
                double both = counts[i][j] + counts[j][i];
                if (both > 0) {
                    double off = counts[i][j] - counts[j][i];
                    statistic += off * off / both;
                    pairs++;
                }
            }
        }
        return of(statistic, pairs);
    }

    /** Stuart 1955 doi:10.1093/biomet/42.3-4.412 and Maxwell 1970: have both the same shares of every level? */
    static MarginTest stuartMaxwell(long[][] counts) {
        return quadratic(counts, false);
    }

    /** Bhapkar 1966 doi:10.1080/01621459.1966.10502021: the same question with the Wald variance. */
    static MarginTest bhapkar(long[][] counts) {
        return quadratic(counts, true);
    }

    private static MarginTest quadratic(long[][] counts, boolean wald) {
        int q = counts.length;
        double[] rows = new double[q];
        double[] columns = new double[q];
        double n = 0;
        for (int i = 0; i < q; i++) {
            for (int j = 0; j < q; j++) {
                rows[i] += counts[i][j];
                columns[j] += counts[i][j];
                n += counts[i][j];
            }
        }
        int[] used = IntStream.range(0, q).filter(i -> rows[i] + columns[i] > 0).toArray();
        int k = used.length - 1;
        if (k <= 0) {
            return of(0, 0);
        }
        RealVector apart = new ArrayRealVector(k);
        RealMatrix spread = new Array2DRowRealMatrix(k, k);
        for (int a = 0; a < k; a++) {
            int i = used[a];
            apart.setEntry(a, rows[i] - columns[i]);
            for (int b = 0; b < k; b++) {
                int j = used[b];
                double value =
                        i == j ? rows[i] + columns[i] - 2.0 * counts[i][i] : -(double) (counts[i][j] + counts[j][i]);
                if (wald) {
                    value -= (rows[i] - columns[i]) * (rows[j] - columns[j]) / n;
                }
                spread.setEntry(a, b, value);
            }
        }
        LUDecomposition solver = new LUDecomposition(spread, 1e-10);
        if (!solver.getSolver().isNonSingular()) {
            return new MarginTest(
                    OptionalDouble.empty(), OptionalInt.empty(), OptionalDouble.empty(), Optional.of(SINGULAR));
        }
        return of(apart.dotProduct(solver.getSolver().solve(apart)), k);
    }

    private static MarginTest of(double statistic, int degreesOfFreedom) {
        if (degreesOfFreedom == 0) {
            return new MarginTest(
                    OptionalDouble.of(statistic),
                    OptionalInt.of(0),
                    OptionalDouble.empty(),
                    Optional.of("no clip on which they differ"));
        }
        return new MarginTest(
                OptionalDouble.of(statistic),
                OptionalInt.of(degreesOfFreedom),
                OptionalDouble.of(Quantiles.chiSquaredAbove(statistic, degreesOfFreedom)),
                Optional.empty());
    }
}
