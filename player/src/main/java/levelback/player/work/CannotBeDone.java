package levelback.player.work;

/**
 * The input was right, but the work could not be done: a full disk, a folder that may not be written, a missing system
 * library. The message is one clear sentence for a person. The command line prints it and ends with status 1.
 */
public class CannotBeDone extends RuntimeException {

    private static final long serialVersionUID = 1L;

    /** @param sentence one clear sentence for a person, on one line */
    public CannotBeDone(String sentence) {
        super(sentence);
    }

    /**
     * @param sentence one clear sentence for a person, on one line
     * @param cause what was caught
     */
    public CannotBeDone(String sentence, Throwable cause) {
        super(sentence, cause);
    }
}
