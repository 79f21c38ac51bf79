package levelback.scoring.value;

/** A leg of the cow; left and right are always the cow's own. */
public enum Leg {
    /** Left fore. */
    LF,
    /** Right fore. */
    RF,
    /** Left hind. */
    LH,
    /** Right hind. */
    RH;

    /** Whether this is a fore leg. */
    public boolean isFore() {
        return this == LF || this == RF;
    }

    /** Whether this leg is on the cow's left. */
    public boolean isLeft() {
        return this == LF || this == LH;
    }

    /** The other leg of the same pair. */
    public Leg partner() {
        return switch (this) {
            case LF -> RF;
            case RF -> LF;
            case LH -> RH;
            case RH -> LH;
        };
    }

    /** The leg at the other end of the same side. */
    public Leg sameSide() {
        return switch (this) {
            case LF -> LH;
            case RF -> RH;
            case LH -> LF;
            case RH -> RF;
        };
    }
}
