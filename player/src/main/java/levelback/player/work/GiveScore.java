package levelback.player.work;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import levelback.scoring.scale.GaitScale;
import levelback.scoring.value.Leg;
import levelback.store.book.Book;
import levelback.store.book.StoreException;
import levelback.store.herd.CowId;
import levelback.store.herd.PersonId;
import levelback.store.herd.Score;
import levelback.store.herd.ScoreId;
import levelback.store.herd.VisitId;
import levelback.store.lane.PassId;

/**
 * Puts a gait score in force. One is in force for a cow, visit, scorer and leg; an earlier one is superseded and stays in
 * the history. A change made once the earlier scores were open is kept as seen before changing.
 */
public final class GiveScore {

    /** How long a scorer may put a slip right before the earlier scores open (the design, section 4). */
    public static final Duration SHUT_FOR = Duration.ofSeconds(3);

    private final Book book;

    public GiveScore(Book book) {
        this.book = book;
    }

    /**
     * What a scorer says of a cow.
     *
     * @param pass the pass it was judged from; empty for a score given live
     * @param leg the leg it is about, where the scorer named one
     * @param at when it was entered
     * @param earlierOpen whether this scorer had the earlier scores of this cow open when saying it
     */
    public record Judgement(
            CowId cow,
            VisitId visit,
            Optional<PassId> pass,
            PersonId scorer,
            Optional<Leg> leg,
            GaitScale scale,
            double level,
            Instant at,
            boolean earlierOpen) {}

    /**
     * @return the score now in force; the same as before if it says nothing new
     * @throws StoreException with one sentence if the scale has no such level
     */
    public Score give(Judgement said) {
        if (!said.scale().allows(said.level())) {
            throw new StoreException("%s has no score %s; it runs from %s to %s in steps of %s."
                    .formatted(
                            said.scale().name(),
                            plain(said.level()),
                            plain(said.scale().lowest()),
                            plain(said.scale().highest()),
                            plain(said.scale().step())));
        }
        Optional<Score> before = inForce(said);
        if (before.isPresent()
                && before.get().level() == said.level()
                && before.get().scaleId().equals(said.scale().id())) {
            return before.get();
        }
        boolean seen = said.earlierOpen()
                || before.map(score -> score.seenBeforeChanging()
                                || !said.at().isBefore(score.at().plus(SHUT_FOR)))
                        .orElse(false);
        Score score = new Score(
                ScoreId.fresh(),
                said.cow(),
                said.visit(),
                said.pass(),
                said.scorer(),
                said.leg(),
                said.scale().id(),
                said.level(),
                said.at(),
                seen);
        return book.herd().put(score);
    }

    private Optional<Score> inForce(Judgement said) {
        return book.herd().scoresOf(said.visit()).stream()
                .filter(score -> score.cow().equals(said.cow())
                        && score.scorer().equals(said.scorer())
                        && score.leg().equals(said.leg()))
                .findFirst();
    }

    private static String plain(double level) {
        return level == Math.rint(level) ? Long.toString((long) level) : Double.toString(level);
    }
}
