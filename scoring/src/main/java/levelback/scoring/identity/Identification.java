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
     * @param exchange chance that two neighbouring readings stand in the list with their tags exchanged
     */
    public record Clock(
            double offsetS,
            double offsetSeS,
            double driftPpm,
            double driftSePpm,
            AlignmentParameters with,
            double exchange) {}

    /**
     * Who a pass is.
     *
     * @param tag the likeliest; empty where "no read" is likeliest
     * @param probability of that
     * @param others the other possibilities of at least 0.001, the likeliest first; without a tag: no read
     * @param committed whether it is settled: by a hand, or by the program because it is likely enough (0.9 or more
     *     each, at most 3 in 400 of all it settles expected wrong); else it is left to the person
     */
    public record PassIdentity(
            String pass, Optional<String> tag, double probability, List<Chance> others, boolean committed) {
        public PassIdentity {
            others = List.copyOf(others);
        }

        PassIdentity settled(boolean now) {
            return new PassIdentity(pass, tag, probability, others, now);
        }
    }

    /** A possibility and its probability; without a tag: no read. */
    public record Chance(Optional<String> tag, double probability) {}
}
