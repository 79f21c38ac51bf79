package levelback.scoring.foot;

/** Something seen on a foot from a distance, on video or from the parlour pit. {@link #key()} is the name in files. */
public enum FootSign {
    SWELLING("swelling"),
    OVERGROWN("overgrown"),
    BLOCK_ON("block-on"),
    BANDAGE_ON("bandage-on"),
    WOUND("wound"),
    DIRTY("dirty");

    private final String key;

    FootSign(String key) {
        this.key = key;
    }

    /** Stable name in files. */
    public String key() {
        return key;
    }
}
