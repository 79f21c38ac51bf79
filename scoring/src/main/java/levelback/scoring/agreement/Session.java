package levelback.scoring.agreement;

/**
 * The scores of one session, clip by clip: the scores of clip {@code c} stand at {@code start(c)} to {@code end(c) - 1},
 * by scorer. Clips, scorers and levels are indices into the lists of {@link Ratings}.
 */
public final class Session {

    private final int[] starts;
    private final int[] scorers;
    private final int[] levels;

    Session(int[] starts, int[] scorers, int[] levels) {
        this.starts = starts;
        this.scorers = scorers;
        this.levels = levels;
    }

    /** All clips of the panel, also those without a score in this session. */
    public int clips() {
        return starts.length - 1;
    }

    /** All scores of the session. */
    public int scores() {
        return scorers.length;
    }

    /** Where the scores of a clip begin. */
    public int start(int clip) {
        return starts[clip];
    }

    /** One past the last score of a clip. */
    public int end(int clip) {
        return starts[clip + 1];
    }

    /** Who gave the score at a place. */
    public int scorer(int at) {
        return scorers[at];
    }

    /** The level given at a place. */
    public int level(int at) {
        return levels[at];
    }
}
