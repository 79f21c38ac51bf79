package levelback.player.stage;

/**
 * Where a moment lies across a strip.
 *
 * @param fromUs moment at {@code leftPx}
 * @param toUs moment at {@code rightPx}
 */
record StripScale(long fromUs, long toUs, double leftPx, double rightPx) {

    /** What a person can read between two ticks of the ruler. */
    private static final double CLOSEST_TICKS_PX = 70;

    private static final long[] STEPS_US = {
        10_000,
        20_000,
        50_000,
        100_000,
        200_000,
        500_000,
        1_000_000,
        2_000_000,
        5_000_000,
        10_000_000,
        20_000_000,
        30_000_000,
        60_000_000,
        120_000_000,
        300_000_000,
        600_000_000,
        1_800_000_000L,
        3_600_000_000L
    };

    double x(long timeUs) {
        return leftPx + (rightPx - leftPx) * (timeUs - fromUs) / (double) (toUs - fromUs);
    }

    /** The moment at a place, held within the span. */
    long timeUs(double x) {
        double share = Math.max(0, Math.min(1, (x - leftPx) / (rightPx - leftPx)));
        return fromUs + Math.round(share * (toUs - fromUs));
    }

    /** Time between two ticks of the ruler. */
    long tickUs() {
        double perPx = (toUs - fromUs) / Math.max(1, rightPx - leftPx);
        for (long step : STEPS_US) {
            if (step / perPx >= CLOSEST_TICKS_PX) {
                return step;
            }
        }
        return STEPS_US[STEPS_US.length - 1];
    }
}
