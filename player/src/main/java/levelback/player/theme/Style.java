package levelback.player.theme;

/** Style classes of {@code desk.css}; code writes the constant, never the string. */
public final class Style {
    /** Page head, 20 px bold. */
    public static final String PAGE_HEAD = "lb-page-head";
    /** Section head, 14 px semibold. */
    public static final String HEAD = "lb-head";
    /** Small second line, 12 px. */
    public static final String SMALL = "lb-small";
    /** Hint, 11 px, third voice. */
    public static final String HINT = "lb-hint";
    /** Body text that is strong. */
    public static final String STRONG = "lb-strong";
    /** Second voice. */
    public static final String SECOND = "lb-second";
    /** Third voice. */
    public static final String THIRD = "lb-third";
    /** A cow's number in a row, 16 px. */
    public static final String COW = "lb-cow";
    /** The cow on the page, 20 px bold. */
    public static final String COW_PAGE = "lb-cow-page";
    /** The cow in the chute, 40 px. */
    public static final String COW_BIG = "lb-cow-big";
    /** A lone figure, 24 px. */
    public static final String FIGURE = "lb-figure";
    /** A figure in a column, right. */
    public static final String NUMBER = "lb-number";
    /** Something that opens what is behind it: green underline. */
    public static final String OPENS = "lb-opens";
    /** The page's ground. */
    public static final String SHEET = "lb-sheet";
    /** A quiet field or group head. */
    public static final String INSET = "lb-inset";
    /** The ground behind page, race and sill. */
    public static final String GROUND = "lb-ground";
    /** Behind pictures. */
    public static final String WELL = "lb-well";
    /** A row of a list, 30 px, hairline below; takes {@link #CHOSEN}. */
    public static final String ROW = "lb-row";
    /** A loose row, 38 px. */
    public static final String ROW_LOOSE = "lb-row-loose";
    /** The head row of a table: 12 px over an ink rule. */
    public static final String TABLE_HEAD = "lb-table-head";
    /** A group head in a list. */
    public static final String GROUP = "lb-group";
    /** Chosen row, key or part. */
    public static final String CHOSEN = "lb-chosen";
    /** A key. */
    public static final String KEY = "lb-key";
    /** The one next thing on a page. */
    public static final String KEY_MAIN = "lb-key-main";
    /** A key of the Trim page, 44 px. */
    public static final String KEY_TRIM = "lb-key-trim";
    /** A key without outline. */
    public static final String KEY_PLAIN = "lb-key-plain";
    /** A key of chute mode: black outline, big words. */
    public static final String KEY_CHUTE = "lb-key-chute";
    /** A hairline. */
    public static final String RULE = "lb-rule";
    /** An ink rule. */
    public static final String INK_RULE = "lb-ink-rule";
    /** A part with a hairline at its right. */
    public static final String RIGHT_RULE = "lb-right-rule";
    /** A part with a hairline at its left. */
    public static final String LEFT_RULE = "lb-left-rule";
    /** A part with a hairline below. */
    public static final String BELOW_RULE = "lb-below-rule";

    private Style() {}
}
