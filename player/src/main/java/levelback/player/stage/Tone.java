package levelback.player.stage;

/**
 * How much lighter or harder a picture is shown than it was filmed, for a dark parlour. On the screen only: what is
 * decoded, measured, kept as a still or cut as a clip never passes through here.
 *
 * <p>With {@code v} a colour value from 0 to 1: {@code u = v^(2^(-light/3))}, then {@code 0.5 + (u - 0.5) 2^(contrast/3)},
 * held to 0 to 1. So three steps of light bring a value of 0.25 up to 0.5 and leave black and white where they are.
 *
 * @param light steps lighter, below 0 darker; -{@value #MOST} to {@value #MOST}
 * @param contrast steps harder, below 0 softer; -{@value #MOST} to {@value #MOST}
 */
public record Tone(int light, int contrast) {

    /** Most steps either way. */
    public static final int MOST = 6;

    /** The picture as it was filmed. */
    public static final Tone AS_FILMED = new Tone(0, 0);

    private static final double STEPS_TO_DOUBLE = 3;
    private static final int WHITE = 255;

    /** Steps beyond the most are held to it. */
    public Tone {
        light = Math.max(-MOST, Math.min(MOST, light));
        contrast = Math.max(-MOST, Math.min(MOST, contrast));
    }

    /** Some steps lighter and harder than this one. */
    public Tone plus(int lighter, int harder) {
        return new Tone(light + lighter, contrast + harder);
    }

    /** What each 8-bit colour value is shown as. */
    int[] table() {
        double bend = Math.pow(2, -light / STEPS_TO_DOUBLE);
        double slope = Math.pow(2, contrast / STEPS_TO_DOUBLE);
        int[] table = new int[WHITE + 1];
        for (int v = 0; v <= WHITE; v++) {
            double bent = Math.pow((double) v / WHITE, bend);
            double shown = 0.5 + (bent - 0.5) * slope;
            table[v] = (int) Math.round(WHITE * Math.max(0, Math.min(1, shown)));
        }
        return table;
    }
}
