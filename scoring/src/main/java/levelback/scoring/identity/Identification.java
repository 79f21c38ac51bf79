package levelback.scoring.identity;

import java.util.List;
import java.util.Optional;

/**
 * Which cow each pass is.
 *
 * @param clock the reader's clock; empty where no read matches a pass
 * @param passes one for each pass, in the order given
 * @param unmatchedTags tags that are the likeliest of no pass, in order of their first reading
 * @param notes what a reader should know, one sentence each
 * @param why why nothing could be matched
 */
public record Identification(
        Optional<Clock> clock,
        List<PassIdentity> passes,
        List<String> unmatchedTags,
        List<String> notes,
        Optional<String> why) {
    public Identification {
        passes = List.copyOf(passes);
        unmatchedTags = List.copyOf(unmatchedTags);
        notes = List.copyOf(notes);
    }

    /**
     * The reader's clock against the camera's.
     *
     * @param offsetS reader less camera at the first pass, in seconds, positive when the reader is ahead
     * @param offsetSeS its standard error
     * @param driftPpm how fast the reader's clock gains, in millionths of camera time
     * @param driftSePpm its standard error
     * @param with all parameters of the alignment
     */
    public record Clock(
            double offsetS, double offsetSeS, double driftPpm, double driftSePpm, AlignmentParameters with) {}

    /**
     * Who a pass is.
     *
     * @param tag the likeliest; empty where "no read" is likeliest
     * @param probability of that
     * @param others the other possibilities of at least 0.001, the likeliest first; without a tag: no read
     * @param committed whether the program settles it: {@code probability} of {@link Identify#COMMIT} or more, or a
     *     hand's decision; else it is left to the person
     */
    public record PassIdentity(
            String pass, Optional<String> tag, double probability, List<Chance> others, boolean committed) {
        public PassIdentity {
            others = List.copyOf(others);
        }
    }

    /** A possibility and its probability; without a tag: no read. */
    public record Chance(Optional<String> tag, double probability) {}
}
