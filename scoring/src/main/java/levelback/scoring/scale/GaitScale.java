package levelback.scoring.scale;

import java.util.List;

/**
 * A published gait scale.
 *
 * @param id stable name for files and settings, such as {@code mobility-0-3}
 * @param name name as printed in the trade
 * @param source where it was published, and what of it is from memory
 * @param levels its levels, soundest first
 * @param lameCut a score at or above it counts as lame
 * @param severeCut a score at or above it counts as severely lame
 * @param step smallest difference between two scores that the scale allows, 1 or 0.5
 */
public record GaitScale(
        String id, String name, String source, List<ScaleLevel> levels, double lameCut, double severeCut, double step) {
    public GaitScale {
        levels = List.copyOf(levels);
    }

    /** Whether a score may be written on this scale. */
    public boolean allows(double score) {
        double steps = (score - lowest()) / step;
        return score >= lowest() && score <= highest() && Math.rint(steps) == steps;
    }

    /** The soundest level. */
    public double lowest() {
        return levels.get(0).value();
    }

    /** The lamest level. */
    public double highest() {
        return levels.get(levels.size() - 1).value();
    }
}
