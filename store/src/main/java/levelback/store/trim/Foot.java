package levelback.store.trim;

import levelback.scoring.value.Leg;

/**
 * A foot that was lifted. A foot with no row was not lifted, which is not the same as clean.
 *
 * @param noLesion the trimmer looked and found nothing
 */
public record Foot(FootId id, LiftId lift, Leg leg, boolean noLesion) {}
