package levelback.clips.drawn.gait;

/** A value given at some instants of a span 0 to 1, eased between them by half a cosine. */
final class EasedKeys {
    private final double[] at;
    private final double[] value;

    /** Instants and values in turn: {@code at0, value0, at1, value1, …}. */
    EasedKeys(double... pairs) {
        at = new double[pairs.length / 2];
        value = new double[pairs.length / 2];
        for (int i = 0; i < at.length; i++) {
            at[i] = pairs[2 * i];
            value[i] = pairs[2 * i + 1];
        }
    }

    double get(double f) {
        if (f <= at[0]) {
            return value[0];
        }
        for (int i = 1; i < at.length; i++) {
            if (f <= at[i]) {
                double share = (1 - Math.cos(Math.PI * (f - at[i - 1]) / (at[i] - at[i - 1]))) / 2;
                return value[i - 1] + share * (value[i] - value[i - 1]);
            }
        }
        return value[value.length - 1];
    }
}
