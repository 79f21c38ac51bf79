package levelback.player.trim;

import levelback.scoring.foot.Claw;

/**
 * A zone of the claw map on one claw, which is what a person points at.
 *
 * @param claw outer, inner, or between the claws for zones 0 and 10
 * @param zone 0 to 12 on the International Lameness Committee's map
 */
record ClawZone(Claw claw, int zone) {

    /** The zone on a claw; 0 and 10 lie between the claws whichever claw is asked for. */
    static ClawZone of(Claw claw, int zone) {
        return new ClawZone(zone == 0 || zone == 10 ? Claw.INTERDIGITAL : claw, zone);
    }
}
