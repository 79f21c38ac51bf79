package levelback.player.trim;

/**
 * A point of the foot map.
 *
 * @param x to the right
 * @param y downwards
 */
record Spot(double x, double y) {}
