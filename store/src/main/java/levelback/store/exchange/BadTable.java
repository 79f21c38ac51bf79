package levelback.store.exchange;

import levelback.store.book.StoreException;

/**
 * A table that cannot be used. The message is one sentence for a person: file, line, column, and what to do; the parts
 * are kept for a list of refused rows.
 */
public final class BadTable extends StoreException {

    private static final long serialVersionUID = 1L;

    private final long line;
    private final String why;

    /**
     * @param table name of the table as given
     * @param line line it begins on, from 1; 0 where it is about the whole table
     * @param why what is wrong and what to do, without file and line
     */
    public BadTable(String table, long line, String why) {
        super(table + (line > 0 ? ", line " + line : "") + ": " + why);
        this.line = line;
        this.why = why;
    }

    /** Line from 1; 0 where it is about the whole table. */
    public long line() {
        return line;
    }

    /** What is wrong and what to do, without file and line. */
    public String why() {
        return why;
    }
}
