package levelback.player.desk;

/** The eight pages; each keeps its place in the race and its function key, built or not. */
public enum PageId {
    LANE,
    SCORE,
    MEASURE,
    DRAFT,
    TRIM,
    PROOF,
    AGREEMENT,
    REVIEW
}
