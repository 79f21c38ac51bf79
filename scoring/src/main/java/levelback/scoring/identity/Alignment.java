package levelback.scoring.identity;

/**
 * Which read belongs to which pass: the posterior of every pass, summed over all partial one-to-one matchings.
 *
 * <p>Model: read j has its time r_j, pass i its middle t_i. A matching A has
 *
 * <pre>
 * P(A, data) ~ (1-m)^matched · m^(passes unread) · lambda^(reads without a pass) · epsilon^inversions
 *              · product over matched pairs of N(r_j ; t_i + offset + drift·(t_i - t_0), sigma)
 * </pre>
 *
 * with the parameters of {@link AlignmentParameters}; an inversion is a pair of matched passes whose reads stand
 * strictly in the opposite order. The posterior of pass i = read j is the sum over the matchings that say so.
 *
 * <p>Method: forward and backward sums over the passes in order of time. What the passes before have taken is kept as a
 * set of bits over the reads within reach of the present pass, so that every displaced read within that window, and
 * every inversion in it, is counted exactly; with an inversion factor of 0 only the matchings that keep the order are
 * left. Sums are rescaled at every pass and the scale kept as a logarithm, so that nothing underflows. Up to
 * {@value #MOST_READS} reads every matching is in; with more, reads over {@value #REACH_SIGMAS} sigma from a pass are
 * not weighed for it (a factor under 3e-18), and {@link #windowCut} says where even nearer ones had to be left out.
 *
 * <p>Times are seconds, both lists ascending; the first pass is t_0. Held to the list of every matching
 * ({@code check-values/identify/tiny.json}, and by brute force on random small cases) at 1e-9.
 */
public final class Alignment {

    /** A pass that may be any read or none. */
    public static final int FREE = -1;
    /** A pass that a hand has settled as unread. */
    public static final int UNREAD = -2;

    static final int MOST_READS = 12;
    static final double REACH_SIGMAS = 9;

    private final Windows windows;
    private final double[][] ofRead;
    private final double[] unread;
    private final int[] likeliest;
    private final double logLikeliest;
    private final double logEvidence;

    Alignment(
            Windows windows,
            double[][] ofRead,
            double[] unread,
            int[] likeliest,
            double logLikeliest,
            double logEvidence) {
        this.windows = windows;
        this.ofRead = ofRead;
        this.unread = unread;
        this.likeliest = likeliest;
        this.logLikeliest = logLikeliest;
        this.logEvidence = logEvidence;
    }

    /**
     * Aligns passes with reads.
     *
     * @param passTimesS middle of each pass, ascending
     * @param readTimesS time of each read by the reader's clock, ascending
     * @param fixed for each pass {@link #FREE}, {@link #UNREAD}, or the read that a hand has given her; a read beyond
     *     her window makes the pass unread
     * @throws IllegalArgumentException if times are not finite or do not ascend, or lengths differ
     */
    public static Alignment of(double[] passTimesS, double[] readTimesS, AlignmentParameters with, int[] fixed) {
        return of(passTimesS, readTimesS, with, fixed, REACH_SIGMAS, MOST_READS, true);
    }

    /** Aligns passes with reads, nothing settled by hand. */
    public static Alignment of(double[] passTimesS, double[] readTimesS, AlignmentParameters with) {
        int[] free = new int[passTimesS.length];
        java.util.Arrays.fill(free, FREE);
        return of(passTimesS, readTimesS, with, free);
    }

    /** The posteriors alone, with other limits on what is weighed; no likeliest matching. */
    static Alignment of(
            double[] passTimesS,
            double[] readTimesS,
            AlignmentParameters with,
            int[] fixed,
            double reachSigmas,
            int mostReads) {
        return of(passTimesS, readTimesS, with, fixed, reachSigmas, mostReads, false);
    }

    private static Alignment of(
            double[] passTimesS,
            double[] readTimesS,
            AlignmentParameters with,
            int[] fixed,
            double reachSigmas,
            int mostReads,
            boolean matching) {
        requireAscending(passTimesS, "pass times");
        requireAscending(readTimesS, "read times");
        if (fixed.length != passTimesS.length) {
            throw new IllegalArgumentException(
                    fixed.length + " decisions for " + passTimesS.length + " passes; one each is needed");
        }
        double[] expected = new double[passTimesS.length];
        for (int i = 0; i < expected.length; i++) {
            expected[i] = passTimesS[0] + with.expectedReadS(passTimesS[i] - passTimesS[0]);
        }
        Windows windows = Windows.of(expected, readTimesS, reachSigmas * with.sigmaS(), mostReads);
        return new ForwardBackward(expected, readTimesS, with, fixed, windows).run(matching);
    }

    private static void requireAscending(double[] times, String what) {
        for (int i = 0; i < times.length; i++) {
            if (!Double.isFinite(times[i]) || (i > 0 && times[i] < times[i - 1])) {
                throw new IllegalArgumentException(
                        what + " must be finite and ascend: number " + i + " is " + times[i]);
            }
        }
    }

    /** How many passes. */
    public int passes() {
        return unread.length;
    }

    /** First read that was weighed for a pass. */
    public int firstRead(int pass) {
        return windows.from()[pass];
    }

    /** One past the last read that was weighed for a pass. */
    public int endRead(int pass) {
        return windows.to()[pass];
    }

    /** Probability that a read is of this pass; 0 outside her window. */
    public double probability(int pass, int read) {
        int at = read - windows.from()[pass];
        return at < 0 || at >= ofRead[pass].length ? 0 : ofRead[pass][at];
    }

    /** Probability that the pass has no read. */
    public double unread(int pass) {
        return unread[pass];
    }

    /** The pass's read in the likeliest matching as a whole, or {@link #UNREAD}. */
    public int likeliestMatching(int pass) {
        return likeliest[pass];
    }

    /** Natural logarithm of the posterior probability of the likeliest matching as a whole. */
    public double logProbabilityOfLikeliestMatching() {
        return logLikeliest - logEvidence;
    }

    /** Natural logarithm of the sum of P(A, data) over all matchings. */
    public double logEvidence() {
        return logEvidence;
    }

    /** Whether reads within reach of a pass were left out because more than {@value #MOST_READS} were. */
    public boolean windowCut() {
        return windows.cut();
    }
}
