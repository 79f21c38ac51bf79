package levelback.scoring.gait;

import java.util.Optional;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.DecompositionSolver;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/** Ordinary least squares by QR. */
final class LeastSquares {

    /**
     * A fit.
     *
     * @param covariance of the coefficients; zeros where no degrees of freedom are left
     * @param degreesOfFreedom rows less columns
     */
    record Fit(RealVector coefficients, RealMatrix covariance, int degreesOfFreedom) {

        double coefficient(int column) {
            return coefficients.getEntry(column);
        }
    }

    private LeastSquares() {}

    /** Empty where the columns cannot be told apart. */
    static Optional<Fit> fit(double[][] design, double[] y) {
        RealMatrix x = new Array2DRowRealMatrix(design, false);
        int df = x.getRowDimension() - x.getColumnDimension();
        if (df < 0) {
            return Optional.empty();
        }
        QRDecomposition qr = new QRDecomposition(x, 1e-10);
        DecompositionSolver solver = qr.getSolver();
        if (!solver.isNonSingular()) {
            return Optional.empty();
        }
        RealVector b = solver.solve(new ArrayRealVector(y, false));
        double rss = 0;
        RealVector fitted = x.operate(b);
        for (int i = 0; i < y.length; i++) {
            rss += (y[i] - fitted.getEntry(i)) * (y[i] - fitted.getEntry(i));
        }
        int k = x.getColumnDimension();
        RealMatrix r = qr.getR().getSubMatrix(0, k - 1, 0, k - 1);
        RealMatrix inverse = new QRDecomposition(r, 0).getSolver().getInverse();
        RealMatrix covariance = inverse.multiply(inverse.transpose()).scalarMultiply(df > 0 ? rss / df : 0);
        return Optional.of(new Fit(b, covariance, df));
    }
}
