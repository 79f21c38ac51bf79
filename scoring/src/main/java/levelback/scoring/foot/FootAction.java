package levelback.scoring.foot;

/** What was done to a foot. {@link #key()} is the stable name in files. */
public enum FootAction {
    TRIMMED("trimmed"),
    CLAW_LOWERED("claw-lowered"),
    LOOSE_HORN_OFF("loose-horn-off"),
    DISHED("dished"),
    BLOCK_INNER("block-inner"),
    BLOCK_OUTER("block-outer"),
    BLOCK_OFF("block-off"),
    BANDAGE("bandage"),
    FOREIGN_BODY_OUT("foreign-body-out");

    private final String key;

    FootAction(String key) {
        this.key = key;
    }

    /** Stable name in files. */
    public String key() {
        return key;
    }
}
