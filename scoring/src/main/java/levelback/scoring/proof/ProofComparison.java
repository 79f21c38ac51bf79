package levelback.scoring.proof;

import java.util.OptionalDouble;
import levelback.scoring.value.Estimate;

/**
 * Two scorers held against the same lifted observations.
 *
 * @param a the first scorer
 * @param b the second
 * @param pairs observations (cow and day; unit leg: and leg) that both scored and whose window is not open
 * @param lifted the lifted among them
 * @param clustered whether a cow comes more than once among those, or the unit is the leg
 * @param sensitivity who found more of the lesions
 * @param specificity who called more of the others sound
 * @param auc whose scores rank better
 */
public record ProofComparison(
        String a,
        String b,
        long pairs,
        long lifted,
        boolean clustered,
        Shares sensitivity,
        Shares specificity,
        Areas auc) {

    /**
     * The same share of two scorers.
     *
     * @param difference a less b
     * @param both pairs both were right on
     * @param aOnly pairs only a was right on
     * @param bOnly pairs only b was right on
     * @param neither pairs neither was right on
     * @param test whether the two differ
     */
    public record Shares(
            Estimate a, Estimate b, Estimate difference, long both, long aOnly, long bOnly, long neither, Test test) {}

    /**
     * McNemar's test.
     *
     * @param statistic on one degree of freedom, no continuity correction
     * @param pValue of the statistic
     * @param exactP exact, two-sided
     * @param midP the exact one less half the chance of what was seen
     * @param method which form
     * @param why what is missing; empty text where nothing is
     */
    public record Test(
            OptionalDouble statistic,
            OptionalDouble pValue,
            OptionalDouble exactP,
            OptionalDouble midP,
            String method,
            String why) {}

    /**
     * The areas of two scorers.
     *
     * @param difference a less b
     * @param z difference over its standard error
     * @param pValue two-sided, normal
     * @param why what is missing; empty text where nothing is
     */
    public record Areas(
            Estimate a, Estimate b, Estimate difference, OptionalDouble z, OptionalDouble pValue, String why) {}
}
