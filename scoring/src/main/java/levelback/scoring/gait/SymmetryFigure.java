package levelback.scoring.gait;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import levelback.scoring.value.Interval;
import org.apache.commons.statistics.distribution.ContinuousDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * Symmetry indices with their intervals. The signed index D = 200(L−R)/(L+R) has the standard uncertainty u of the delta
 * method, ∂D/∂L = 400R/(L+R)², ∂D/∂R = −400L/(L+R)², left and right of one round taken together. The index is |D|, and
 * its interval inverts the distribution of |D| itself: the plain D ± t·u, folded, would reach 97.5 % near 0.
 */
final class SymmetryFigure {

    private final MeanFigure means;
    private final Rounds rounds;
    private final double level;

    SymmetryFigure(MeanFigure means, Rounds rounds, double level) {
        this.means = means;
        this.rounds = rounds;
        this.level = level;
    }

    /**
     * The symmetry of two sets of readings.
     *
     * @param what the readings in words, such as {@code "steps"}
     */
    Symmetry of(List<Reading> left, List<Reading> right, String what) {
        OptionalDouble l = mean(left);
        OptionalDouble r = mean(right);
        String method = "100·|L−R| / (0.5·(L+R)) of the mean " + what;
        if (l.isEmpty() || r.isEmpty()) {
            String side = l.isEmpty() && r.isEmpty() ? "left and right" : l.isEmpty() ? "left" : "right";
            return missing(left, right, method, "no " + side + " " + what + " in the footfalls");
        }
        double a = l.getAsDouble();
        double b = r.getAsDouble();
        OptionalDouble index = Symmetry.index(a, b);
        if (index.isEmpty()) {
            return missing(left, right, method, "the " + what + " do not sum to a way forward");
        }
        double square = (a + b) * (a + b);
        MeanFigure.Parts parts = means.parts(
                List.of(new MeanFigure.Term(left, 400 * b / square), new MeanFigure.Term(right, -400 * a / square)),
                reading -> rounds.at(reading.fromS()));
        String full = method + ", delta method; " + means.method(parts, "s over rounds of the legs");
        if (Double.isNaN(parts.spread()) && parts.propagated() == 0) {
            return new Symmetry(
                    l,
                    r,
                    left.size(),
                    right.size(),
                    index,
                    Optional.empty(),
                    full,
                    Optional.of("one round of the legs does not show how the symmetry varies"));
        }
        return new Symmetry(
                l,
                r,
                left.size(),
                right.size(),
                index,
                Optional.of(folded(index.getAsDouble(), parts.combined(), parts.degreesOfFreedom(), level)),
                full,
                Optional.empty());
    }

    /**
     * The interval of δ from the reading |δ + u·T|: all δ whose acceptance region [a, b] holds it, with a = max(0, δ −
     * q·u) and b such that the region has just the level asked.
     */
    static Interval folded(double reading, double u, double df, double level) {
        if (u == 0) {
            return new Interval(reading, reading);
        }
        ContinuousDistribution error = df > 1e6 ? NormalDistribution.of(0, 1) : TDistribution.of(df);
        double q = error.inverseCumulativeProbability(1 - (1 - level) / 2);
        double x = reading / u;
        double high = (x + q) * u;
        if (x <= q) {
            return new Interval(0, high);
        }
        if (x >= 2 * q) {
            return new Interval((x - q) * u, high);
        }
        // Below δ = q the region is [0, b]: find the δ at which b has come down to the reading.
        double near = 0;
        double far = q;
        for (int i = 0; i < 100; i++) {
            double middle = (near + far) / 2;
            double held = error.cumulativeProbability(x - middle) - error.cumulativeProbability(-x - middle);
            if (held >= level) {
                near = middle;
            } else {
                far = middle;
            }
        }
        return new Interval(near * u, high);
    }

    private static Symmetry missing(List<Reading> left, List<Reading> right, String method, String why) {
        return new Symmetry(
                mean(left),
                mean(right),
                left.size(),
                right.size(),
                OptionalDouble.empty(),
                Optional.empty(),
                method,
                Optional.of(why));
    }

    private static OptionalDouble mean(List<Reading> readings) {
        return readings.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(MeanFigure.Term.mean(readings));
    }
}
