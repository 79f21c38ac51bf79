package levelback.clips.decode;

/** One of the two pictures that an interlaced frame is woven of. */
public enum Field {
    /** Lines 0, 2, 4 and so on. */
    TOP,
    /** Lines 1, 3, 5 and so on. */
    BOTTOM
}
