package levelback.scoring.scale;

/**
 * One level of a gait scale.
 *
 * @param value the number written down
 * @param text what it means, in our own words
 */
public record ScaleLevel(double value, String text) {}
