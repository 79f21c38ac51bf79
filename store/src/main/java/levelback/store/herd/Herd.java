package levelback.store.herd;

import java.time.ZoneId;
import java.util.OptionalInt;

/**
 * A herd and the settings that every page reads.
 *
 * @param scaleId id of its gait scale, see {@code levelback.scoring.scale.GaitScales}
 * @param zone the farm's time zone
 * @param cowsInMilk how many are milked, where known
 */
public record Herd(HerdId id, String name, ZoneId zone, String scaleId, OptionalInt cowsInMilk) {}
