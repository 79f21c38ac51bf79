package levelback.clips.drawn.gait;

import java.util.Optional;
import levelback.clips.drawn.WalkPlan;
import levelback.scoring.value.Leg;

/**
 * How a cow walks, in numbers: the severity table read at her place on the line, with her own stride laid over it.
 * Lengths are those of a cow of size 1; times are hers.
 *
 * <p>Swing times, and tracking-up at 3, follow published group means (Flower, Sanderson and Weary 2005, J Dairy Sci 88,
 * 3166-3173; Flower, Sanderson and Weary 2006, J Dairy Sci 89, 139-146; Flower and others 2007, J Dairy Sci 90,
 * 1235-1242); the rest of the table is our choice, held against those means by test.
 *
 * @param strideM stride length, the same for all four feet
 * @param strideS stride time
 * @param duty share of the stride that a foot stands
 * @param trackingUpM hind print less the fore print of its side that it follows
 * @param backRiseM how far the back is arched up
 * @param favour how much she favours her lame leg, 0 if none
 * @param bobTwiceM head bob twice a stride
 * @param bobOnceM head bob with the lame leg
 * @param headLowerM how much lower she carries her head
 * @param unevenness of her speed
 * @param timeJitter of touch-downs, in strides
 * @param placeJitterM of prints
 * @param lameLeg the leg she favours
 */
public record GaitNumbers(
        double strideM,
        double strideS,
        double duty,
        double trackingUpM,
        double backRiseM,
        double favour,
        double bobTwiceM,
        double bobOnceM,
        double headLowerM,
        double unevenness,
        double timeJitter,
        double placeJitterM,
        Optional<Leg> lameLeg) {

    // L, T, swing, tracking-up, back rise, a, bob twice, bob once, head lower by, c, jitter T, jitter x at s = 1 to 5
    private static final double[][] TABLE = {
        {1.50, 1.14, .44, .020, -.004, 0, .022, 0, 0, .022, .006, .010},
        {1.46, 1.18, .44, 0, .016, .12, .022, .004, .02, .025, .007, .011},
        {1.405, 1.235, .44, -.040, .042, .40, .024, .012, .05, .032, .010, .014},
        {1.315, 1.455, .44, -.120, .074, 1.0, .026, .032, .11, .045, .016, .020},
        {1.10, 1.80, .47, -.220, .110, 1.5, .028, .055, .18, .07, .024, .028},
    };

    /** The numbers of a planned walk. */
    public static GaitNumbers of(WalkPlan plan) {
        return of(
                plan.severityS(),
                plan.lameLeg(),
                plan.traits().sizeFactor(),
                plan.traits().strideFactor());
    }

    /**
     * The numbers at a place on the severity line.
     *
     * @param s 1 to 5
     * @param lameLeg the leg she favours
     * @param size k, her size
     * @param stride ρ, her own stride
     */
    public static GaitNumbers of(double s, Optional<Leg> lameLeg, double size, double stride) {
        if (!(s >= 1 && s <= 5)) {
            throw new IllegalArgumentException("s must be 1 to 5: " + s);
        }
        int row = Math.min(3, (int) (s - 1));
        double share = s - 1 - row;
        double[] v = new double[TABLE[0].length];
        for (int i = 0; i < v.length; i++) {
            v[i] = TABLE[row][i] + share * (TABLE[row + 1][i] - TABLE[row][i]);
        }
        double strideS = v[1] / Math.pow(stride, .4) * Math.sqrt(size);
        double duty = 1 - v[2] * Math.sqrt(size) / strideS;
        return new GaitNumbers(
                v[0] * Math.pow(stride, .6),
                strideS,
                duty,
                v[3],
                v[4],
                lameLeg.isPresent() ? v[5] : 0,
                v[6],
                lameLeg.isPresent() ? v[7] : 0,
                v[8],
                v[9],
                v[10],
                v[11],
                lameLeg);
    }

    /** Share of the stride that a leg stands: less on the lame one, more on its partner. */
    public double duty(Leg leg) {
        if (lameLeg.isEmpty()) {
            return duty;
        }
        if (leg == lameLeg.get()) {
            return duty * (1 - .105 * favour);
        }
        return leg == lameLeg.get().partner() ? Math.min(.86, duty * (1 + .05 * favour)) : duty;
    }

    /** Phase of a leg's touch-down in the stride that begins with LH: lateral sequence; the lame leg's partner comes early. */
    public double touchDown(Leg leg) {
        double phase = switch (leg) {
            case LH -> 0;
            case LF -> .24;
            case RH -> .50;
            case RF -> .74;
        };
        return lameLeg.isPresent() && leg == lameLeg.get().partner() ? phase - .040 * favour : phase;
    }

    /** Where the toe is at the middle of its stance, forward of the cow's own middle. */
    public double toeAtMiddleStance(Leg leg) {
        Leg fore = leg.isFore() ? leg : leg.sameSide();
        Leg hind = fore.sameSide();
        double tracking = trackingUpM;
        if (lameLeg.isPresent()) {
            Leg lame = lameLeg.get();
            boolean own = lame.isLeft() == leg.isLeft();
            tracking += favour * (lame.isFore() ? (own ? .015 : -.030) : (own ? -.045 : .015));
        }
        double between = touchDown(fore) - touchDown(hind);
        double apart = tracking - strideM * (1 - between) - strideM * (duty(hind) - duty(fore)) / 2 + HIND_TO_FORE_M;
        return leg.isFore() ? FORE_TOE_M - apart / 2 : HIND_TOE_M + apart / 2;
    }

    static final double FORE_TOE_M = .62;
    static final double HIND_TOE_M = -.45;
    private static final double HIND_TO_FORE_M = FORE_TOE_M - HIND_TOE_M;
}
