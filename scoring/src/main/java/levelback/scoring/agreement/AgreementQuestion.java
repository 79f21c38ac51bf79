package levelback.scoring.agreement;

/**
 * What is asked of a panel.
 *
 * @param level confidence of the intervals, in (0, 1)
 * @param seed of the resamples
 * @param draws resamples for the figures without a published variance; 0 leaves their intervals out
 * @param latent whether the severity of scorers is also put on the latent scale, which takes longest
 */
public record AgreementQuestion(double level, long seed, int draws, boolean latent) {

    /** @throws IllegalArgumentException if the level is not inside (0, 1) or draws is negative */
    public AgreementQuestion {
        if (!(level > 0 && level < 1) || draws < 0) {
            throw new IllegalArgumentException("not a question: level " + level + ", draws " + draws);
        }
    }

    /** 95 %, seed 1, 2,000 resamples, everything. */
    public static AgreementQuestion usual() {
        return new AgreementQuestion(0.95, 1, 2000, true);
    }
}
