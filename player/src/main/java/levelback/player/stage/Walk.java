package levelback.player.stage;

/**
 * How to walk through a span.
 *
 * @param rate 1 is the cow's own pace, 0.25 a quarter of it; negative walks backwards; never 0
 * @param first first frame of the span
 * @param last last frame of it, included
 * @param loop whether to begin again at the end
 */
public record Walk(double rate, int first, int last, boolean loop) {

    /** @throws IllegalArgumentException if the rate is 0 or no number, or the span is empty */
    public Walk {
        if (rate == 0 || !Double.isFinite(rate) || first < 0 || first > last) {
            throw new IllegalArgumentException("no walk: rate " + rate + ", frames " + first + " to " + last);
        }
    }
}
