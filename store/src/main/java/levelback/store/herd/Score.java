package levelback.store.herd;

import java.time.Instant;
import java.util.Optional;
import levelback.scoring.value.Leg;
import levelback.store.lane.PassId;

/**
 * A gait score in force.
 *
 * @param pass the pass it was judged from; empty for a score given live
 * @param leg the leg it is about, where the scorer named one
 * @param level the level given
 * @param at when it was entered
 * @param seenBeforeChanging whether earlier scores were open when it took its present level
 */
public record Score(
        ScoreId id,
        CowId cow,
        VisitId visit,
        Optional<PassId> pass,
        PersonId scorer,
        Optional<Leg> leg,
        String scaleId,
        double level,
        Instant at,
        boolean seenBeforeChanging) {}
