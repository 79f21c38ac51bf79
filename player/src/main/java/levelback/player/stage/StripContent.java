package levelback.player.stage;

import java.util.List;
import java.util.Optional;
import levelback.scoring.value.Leg;

/**
 * What a strip shows of one span of a recording; times on the stream's own clock.
 *
 * @param fromUs first moment of the span
 * @param toUs end of it, after {@code fromUs}
 * @param stances footfalls that the book has; empty where none are known
 * @param curves head and back over time; empty where nothing was measured
 * @param remarks tags at their moments, in time
 * @param damage spans of the recording that cannot be trusted
 */
public record StripContent(
        long fromUs, long toUs, List<Stance> stances, List<Curve> curves, List<Remark> remarks, List<Damaged> damage) {

    /** Of a recording with nothing wrong with it. */
    public StripContent(long fromUs, long toUs, List<Stance> stances, List<Curve> curves, List<Remark> remarks) {
        this(fromUs, toUs, stances, curves, remarks, List.of());
    }

    /**
     * A span that cannot be trusted.
     *
     * @param toUs its end; may be its beginning, where pictures are missing between two that are there
     * @param text what is wrong, in words
     */
    public record Damaged(long fromUs, long toUs, String text) {}

    /**
     * A tag or a marked span.
     *
     * @param leg the leg it is about
     * @param text the word on screen
     * @param frame the frame that it opens, numbered in the recording
     */
    public record Remark(long timeUs, int frame, Optional<Leg> leg, String text) {}

    /**
     * A line over time: the head's height, or the back's.
     *
     * @param dashed the back is dashed, the head is solid
     */
    public record Curve(boolean dashed, List<Point> points) {
        public Curve {
            points = List.copyOf(points);
        }
    }

    /**
     * A point of a curve.
     *
     * @param value any unit; a curve is drawn between its own lowest and highest
     */
    public record Point(long timeUs, double value) {}

    public StripContent {
        if (toUs <= fromUs) {
            throw new IllegalArgumentException("an empty span: " + fromUs + " to " + toUs);
        }
        stances = List.copyOf(stances);
        curves = List.copyOf(curves);
        remarks = List.copyOf(remarks);
        damage = List.copyOf(damage);
    }
}
