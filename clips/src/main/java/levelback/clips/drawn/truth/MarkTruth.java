package levelback.clips.drawn.truth;

/**
 * Where a point of her is at the middle of a frame's exposure; only points inside the picture have a mark.
 *
 * @param pass number of the pass, from 1
 * @param frame frame number, from 0
 * @param timeS the frame's time
 * @param point {@code hoof_LF}, {@code poll}, … as the {@code track} command names them
 * @param xM along the way she walks, in metres
 * @param yM height, in metres
 * @param xPx column of the upright picture; the centre of the left-most pixel is 0
 * @param yPx row; the centre of the topmost pixel is 0
 * @param hidden whether something painted later covers it
 */
public record MarkTruth(
        int pass,
        int frame,
        double timeS,
        String point,
        double xM,
        double yM,
        double xPx,
        double yPx,
        boolean hidden) {}
