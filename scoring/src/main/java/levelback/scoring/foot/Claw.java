package levelback.scoring.foot;

/** Where on the foot, sideways: the outer claw, the inner claw, the cleft between them, or both claws. */
public enum Claw {
    /** The outer claw. */
    LATERAL,
    /** The inner claw. */
    MEDIAL,
    /** The skin between the claws. */
    INTERDIGITAL,
    /** Both claws alike. */
    BOTH;

    /** The name in files: {@code lateral}, {@code medial}, {@code interdigital}, {@code both}. */
    public String key() {
        return name().toLowerCase(java.util.Locale.ROOT);
    }
}
