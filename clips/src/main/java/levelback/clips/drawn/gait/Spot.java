package levelback.clips.drawn.gait;

/**
 * A point of the cow frame: metres of a cow of size 1, x forward, y up, the floor at 0.
 *
 * @param x forward
 * @param y up
 */
public record Spot(double x, double y) {
    /** This point moved. */
    public Spot plus(double dx, double dy) {
        return new Spot(x + dx, y + dy);
    }

    /** The point a length away in a direction, in radians forward of straight down. */
    public Spot along(double forwardOfDownRad, double lengthM) {
        return new Spot(x + lengthM * Math.sin(forwardOfDownRad), y - lengthM * Math.cos(forwardOfDownRad));
    }

    /** How far off another point is. */
    public double distance(Spot other) {
        return Math.hypot(other.x - x, other.y - y);
    }

    /** Direction of another point, in radians forward of straight down. */
    public double direction(Spot other) {
        return Math.atan2(other.x - x, y - other.y);
    }

    /** The point on the way to another. */
    public Spot towards(Spot other, double share) {
        return new Spot(x + share * (other.x - x), y + share * (other.y - y));
    }

    /** This point turned about another, counter-clockwise (x to y). */
    public Spot turned(Spot about, double rad) {
        double c = Math.cos(rad);
        double s = Math.sin(rad);
        double dx = x - about.x;
        double dy = y - about.y;
        return new Spot(about.x + c * dx - s * dy, about.y + s * dx + c * dy);
    }
}
