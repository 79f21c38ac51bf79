package levelback.scoring.herd;

import java.util.List;
import levelback.scoring.value.Estimate;
import org.apache.commons.statistics.distribution.GammaDistribution;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * Cows that went lame after having been sound twice.
 *
 * <p>A new case is a lame score whose two preceding scores of that cow were both sound. At risk are the days from the
 * score before to every score whose two preceding scores were both sound. The rate is 30 · new cases ÷ days at risk.
 *
 * <p>Interval of the rate: a cow comes more than once and some cows go lame more readily than others, so the variance is
 * taken between cows (ratio estimator, C/(C − 1), C cows at risk) and the interval is symmetric on the logarithm, with t on
 * C − 1 degrees of freedom. Below {@value #FEWEST} new cases or cows at risk that variance is itself too uncertain, and
 * the exact Poisson interval is given.
 *
 * <p>References: Cochran (1977), Sampling Techniques, 3rd ed., section 6.3 and 9A, the ratio estimator over clusters;
 * Garwood (1936), Fiducial limits for the Poisson distribution, Biometrika 28:437, doi:10.1093/biomet/28.3-4.437.
 *
 * @param newCases how many
 * @param riskDays cow days at risk
 * @param scoresAtRisk scores whose two preceding scores were both sound
 * @param ratePer30Days new cases in 30 days at risk; n scores at risk; missing where there are none
 */
public record NewCases(long newCases, long riskDays, long scoresAtRisk, Estimate ratePer30Days) {

    /** Fewest new cases, and fewest cows at risk, for the interval between cows. */
    static final int FEWEST = 10;

    private static final String CLUSTERED =
            "new cases over days at risk, variance clustered by cow, log interval with t";
    private static final String EXACT = "new cases over days at risk, exact Poisson interval (Garwood 1936)";
    private static final double DAYS = 30;

    static NewCases of(List<CowHistory> herd, double lameCut, double level) {
        long cases = 0;
        long days = 0;
        long scores = 0;
        double[] casesOf = new double[herd.size()];
        double[] daysOf = new double[herd.size()];
        int cows = 0;
        for (CowHistory cow : herd) {
            long casesBefore = cases;
            long daysBefore = days;
            for (int i = 2; i < cow.size(); i++) {
                if (cow.afterTwoSound(i, lameCut)) {
                    scores++;
                    days += cow.day(i) - cow.day(i - 1);
                    cases += cow.lame(i, lameCut) ? 1 : 0;
                }
            }
            if (days > daysBefore) {
                casesOf[cows] = (double) (cases - casesBefore);
                daysOf[cows] = (double) (days - daysBefore);
                cows++;
            }
        }
        if (scores == 0) {
            return new NewCases(
                    0, 0, 0, Estimate.missing(0, CLUSTERED, "no cow has a score after two sound scores in a row"));
        }
        return new NewCases(cases, days, scores, rate(casesOf, daysOf, cows, cases, days, scores, level));
    }

    private static Estimate rate(
            double[] casesOf, double[] daysOf, int cows, long cases, long days, long scores, double level) {
        double rate = (double) cases / days;
        double squares = 0;
        for (int i = 0; i < cows; i++) {
            double residual = casesOf[i] - rate * daysOf[i];
            squares += residual * residual;
        }
        if (cases < FEWEST || cows < FEWEST || squares <= 0) {
            return exact(cases, days / DAYS, scores, level);
        }
        double error = Math.sqrt(squares * cows / (cows - 1.0)) / cases;
        double factor = Math.exp(TDistribution.of(cows - 1.0).inverseCumulativeProbability(0.5 + level / 2) * error);
        return Estimate.of(DAYS * rate, DAYS * rate / factor, DAYS * rate * factor, scores, CLUSTERED);
    }

    /** Exact limits of a Poisson count over a time: quantiles of the gamma distribution. */
    static Estimate exact(long cases, double months, long n, double level) {
        double tail = (1 - level) / 2;
        double low = cases == 0 ? 0 : GammaDistribution.of((double) cases, 1).inverseCumulativeProbability(tail);
        double high = GammaDistribution.of(cases + 1.0, 1).inverseSurvivalProbability(tail);
        return Estimate.of(cases / months, low / months, high / months, n, EXACT);
    }
}
