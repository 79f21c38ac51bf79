package levelback.scoring.identity;

/**
 * The parameters of the alignment of passes with reads.
 *
 * @param offsetS reader's clock less the camera's at the first pass, in seconds; positive when the reader is ahead
 * @param drift how fast the reader's clock gains on the camera's, in seconds per second of camera time; above -1
 * @param sigmaS standard deviation of a read's time about the middle of its pass, in seconds; above 0
 * @param miss chance that a walker goes unread, between 0 and 1, both ends out
 * @param strayPerS reads per second from animals that were not filmed; above 0
 * @param inversionFactor factor for each two passes whose reads stand in the opposite order: 1 where order says
 *     nothing, 0 where nobody overtakes
 */
public record AlignmentParameters(
        double offsetS, double drift, double sigmaS, double miss, double strayPerS, double inversionFactor) {

    /** @throws IllegalArgumentException if a parameter is NaN or outside its stated range */
    public AlignmentParameters {
        // Negated so that NaN fails too.
        if (!Double.isFinite(offsetS) || !(drift > -1 && drift < 1)) {
            throw new IllegalArgumentException("no clock: offset %s s, drift %s".formatted(offsetS, drift));
        }
        if (!(sigmaS > 0) || !(miss > 0 && miss < 1) || !(strayPerS > 0)) {
            throw new IllegalArgumentException(
                    "outside their range: sigma %s s, miss %s, stray %s per s".formatted(sigmaS, miss, strayPerS));
        }
        if (!(inversionFactor >= 0 && inversionFactor <= 1)) {
            throw new IllegalArgumentException("inversion factor must be from 0 to 1: " + inversionFactor);
        }
    }

    /** When the reader's clock is expected to show the read of a pass, both in seconds from the first pass. */
    double expectedReadS(double sinceFirstPassS) {
        return sinceFirstPassS + offsetS + drift * sinceFirstPassS;
    }

    /** The same with another clock. */
    AlignmentParameters withClock(double newOffsetS, double newDrift) {
        return new AlignmentParameters(newOffsetS, newDrift, sigmaS, miss, strayPerS, inversionFactor);
    }

    /** The same with another factor for inversions. */
    AlignmentParameters withInversionFactor(double factor) {
        return new AlignmentParameters(offsetS, drift, sigmaS, miss, strayPerS, factor);
    }
}
