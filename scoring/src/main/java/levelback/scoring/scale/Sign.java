package levelback.scoring.scale;

/** Something seen in how she walks. {@link #key()} is the stable name in files. */
public enum Sign {
    SHORT_STRIDE("short-stride", true),
    SPARES_LEG("spares-leg", true),
    UNEVEN_TIMING("uneven-timing", true),
    SHORT_OF_FORE_PRINT("short-of-fore-print", true),
    HEAD_BOB("head-bob", false),
    ARCHED_BACK("arched-back", false),
    STIFF_JOINTS("stiff-joints", true),
    SWINGS_OUT("swings-out", true);

    private final String key;
    private final boolean ofALeg;

    Sign(String key, boolean ofALeg) {
        this.key = key;
        this.ofALeg = ofALeg;
    }

    /** Stable name in files. */
    public String key() {
        return key;
    }

    /** Whether the sign belongs to a leg. */
    public boolean isOfALeg() {
        return ofALeg;
    }
}
