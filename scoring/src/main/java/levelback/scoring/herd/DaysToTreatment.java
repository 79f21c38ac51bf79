package levelback.scoring.herd;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import levelback.scoring.proof.ScoreRow;
import levelback.scoring.proof.TrimRow;
import levelback.scoring.value.Estimate;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * Days from a cow's first lame score to her first trim on or after that day. A cow not trimmed is censored at the last
 * date in either list.
 *
 * <p>The median is the first time at which the Kaplan–Meier curve is at or below one half; its limits are the first times
 * at which the lower and the upper log–log band are.
 *
 * <p>Coverage, 2,000 runs, a median of 22 days with even censoring (bench {@code HerdCoverage}), of the runs with both limits:
 * 95.7 to 97.2 % at 50 to 300 cows, 92.6 % at 20, where more than half of the runs reach no upper limit and are not
 * judged. At so few cows read the limits with that in mind.
 *
 * <p>References: Kaplan & Meier (1958), Nonparametric estimation from incomplete observations, J Am Stat Assoc 53:457;
 * Brookmeyer & Crowley (1982), A confidence interval for the median survival time, Biometrics 38:29.
 *
 * @param median days, n cows with a lame score; missing where the curve stays above one half; with an interval where both
 *     limits are reached
 * @param low lower limit in days; empty where the lower band stays above one half
 * @param high upper limit in days; empty where the upper band stays above one half
 * @param censored cows of these never trimmed
 */
public record DaysToTreatment(Estimate median, OptionalDouble low, OptionalDouble high, long censored) {

    private static final String METHOD = "Kaplan-Meier median, log-log band (Brookmeyer and Crowley 1982)";
    private static final String REFUSED = "REFUSED";

    /**
     * Works it out.
     *
     * @param lameCut a score at or above it is lame
     * @param level confidence level such as 0.95
     */
    public static DaysToTreatment of(List<ScoreRow> scores, List<TrimRow> trims, double lameCut, double level) {
        Map<String, LocalDate> firstLame = new TreeMap<>();
        LocalDate last = LocalDate.MIN;
        for (ScoreRow row : scores) {
            last = row.date().isAfter(last) ? row.date() : last;
            if (row.score() >= lameCut) {
                firstLame.merge(row.cow(), row.date(), (a, b) -> a.isBefore(b) ? a : b);
            }
        }
        Map<String, LocalDate> firstTrim = new HashMap<>();
        for (TrimRow row : trims) {
            last = row.date().isAfter(last) ? row.date() : last;
            LocalDate lame = firstLame.get(row.cow());
            if (lame != null && !row.date().isBefore(lame) && !row.lesion().equals(REFUSED)) {
                firstTrim.merge(row.cow(), row.date(), (a, b) -> a.isBefore(b) ? a : b);
            }
        }
        List<Long> days = new ArrayList<>();
        List<Boolean> treated = new ArrayList<>();
        for (Map.Entry<String, LocalDate> cow : firstLame.entrySet()) {
            LocalDate trim = firstTrim.get(cow.getKey());
            days.add(ChronoUnit.DAYS.between(cow.getValue(), trim == null ? last : trim));
            treated.add(trim != null);
        }
        return of(days, treated, level);
    }

    /**
     * The same from times.
     *
     * @param days time of each cow
     * @param treated whether it ended with treatment; false is censored
     */
    static DaysToTreatment of(List<Long> days, List<Boolean> treated, double level) {
        long censored = treated.stream().filter(t -> !t).count();
        int n = days.size();
        if (n == 0) {
            return new DaysToTreatment(
                    Estimate.missing(0, METHOD, "no cow scored lame"),
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    0);
        }
        TreeMap<Long, long[]> times = new TreeMap<>();
        for (int i = 0; i < n; i++) {
            times.computeIfAbsent(days.get(i), t -> new long[2])[treated.get(i) ? 0 : 1]++;
        }
        double z = NormalDistribution.of(0, 1).inverseSurvivalProbability((1 - level) / 2);
        OptionalDouble median = OptionalDouble.empty();
        OptionalDouble low = OptionalDouble.empty();
        OptionalDouble high = OptionalDouble.empty();
        long atRisk = n;
        double curve = 1;
        double greenwood = 0;
        for (Map.Entry<Long, long[]> time : times.entrySet()) {
            long ended = time.getValue()[0];
            if (ended > 0) {
                curve *= 1 - (double) ended / atRisk;
                greenwood += (double) ended / (atRisk * (double) (atRisk - ended));
                double lower = band(curve, greenwood, z);
                double upper = band(curve, greenwood, -z);
                double day = time.getKey();
                median = first(median, curve <= 0.5 + 1e-12, day);
                low = first(low, lower <= 0.5, day);
                high = first(high, upper <= 0.5, day);
            }
            atRisk -= ended + time.getValue()[1];
        }
        if (median.isEmpty()) {
            String why =
                    "more than half of the " + n + " cows that scored lame were not lifted within the time on record";
            return new DaysToTreatment(Estimate.missing(n, METHOD, why), low, high, censored);
        }
        if (low.isEmpty() || high.isEmpty()) {
            return new DaysToTreatment(
                    Estimate.pointOnly(
                            median.getAsDouble(),
                            n,
                            METHOD,
                            low.isEmpty()
                                    ? "too few of the " + n + " cows were lifted for limits"
                                    : "upper limit not reached within the time on record"),
                    low,
                    high,
                    censored);
        }
        return new DaysToTreatment(
                Estimate.of(median.getAsDouble(), low.getAsDouble(), high.getAsDouble(), n, METHOD),
                low,
                high,
                censored);
    }

    private static OptionalDouble first(OptionalDouble found, boolean here, double day) {
        return found.isEmpty() && here ? OptionalDouble.of(day) : found;
    }

    /** Log–log band of the curve; where nobody is left there is no band, and R gives none either. */
    private static double band(double curve, double greenwood, double z) {
        if (curve <= 0 || !Double.isFinite(greenwood)) {
            return Double.NaN;
        }
        double half = z * Math.sqrt(greenwood) / Math.log(curve);
        return Math.pow(curve, Math.exp(-half));
    }
}
