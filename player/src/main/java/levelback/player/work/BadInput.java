package levelback.player.work;

/**
 * What was given cannot be used: a file, an option, a line. The message is one clear sentence for a person: what, where
 * (file, line, column), what to do. The command line prints it and ends with status 2; a page shows it where the part
 * would be.
 */
public class BadInput extends RuntimeException {

    private static final long serialVersionUID = 1L;

    /** @param sentence one clear sentence for a person, on one line */
    public BadInput(String sentence) {
        super(sentence);
    }

    /**
     * @param sentence one clear sentence for a person, on one line
     * @param cause what was caught
     */
    public BadInput(String sentence, Throwable cause) {
        super(sentence, cause);
    }
}
