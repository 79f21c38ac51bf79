package levelback.player.work;

/**
 * The card at the chute cannot take what was asked. The message is one clear sentence for a person; nothing was written.
 */
public class CardRefused extends BadInput {

    private static final long serialVersionUID = 1L;

    /** @param sentence what is wrong and what to do, in one sentence */
    public CardRefused(String sentence) {
        super(sentence);
    }
}
