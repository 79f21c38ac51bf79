package levelback.store.book.internal;

import java.nio.file.Path;
import java.util.Locale;
import levelback.store.book.StoreException;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/** Says in one sentence why the database could not do something. */
final class SqlSentences {

    private SqlSentences() {}

    /** The failure as it should reach a caller: one that is already a sentence, or no matter of the database, as it is. */
    static RuntimeException of(RuntimeException failure, Path book) {
        for (Throwable t = failure; t != null; t = t.getCause()) {
            if (t instanceof StoreException sentence) {
                return sentence;
            }
            if (t instanceof SQLiteException sql) {
                return new StoreException(sentence(sql, book), failure);
            }
        }
        return failure;
    }

    static String sentence(SQLiteException failure, Path book) {
        String name = String.valueOf(book.getFileName());
        SQLiteErrorCode code = failure.getResultCode();
        String family = code.name().toUpperCase(Locale.ROOT);
        String message = String.valueOf(failure.getMessage());
        if (family.startsWith("SQLITE_FULL")) {
            return "There is no room left for the book " + name
                    + ": this entry was not written and nothing else was lost; free some space and enter it again.";
        }
        if (family.startsWith("SQLITE_NOTADB")) {
            return notABook(book);
        }
        if (family.startsWith("SQLITE_CORRUPT")) {
            return "The book " + name + " is damaged and cannot be read any further: close it, keep a copy of the file,"
                    + " and go back to your last backup.";
        }
        if (family.startsWith("SQLITE_READONLY")
                || family.startsWith("SQLITE_PERM")
                || family.startsWith("SQLITE_AUTH")) {
            return "The book " + name + " may not be written: its file or folder is read-only; nothing was changed."
                    + " Put the book in a folder of your own.";
        }
        if (family.startsWith("SQLITE_CANTOPEN")) {
            return "The book " + book + " cannot be opened or made there: check that its folder is there and may be"
                    + " written.";
        }
        if (family.startsWith("SQLITE_BUSY") || family.startsWith("SQLITE_LOCKED")) {
            return "Another program is writing in the book " + name
                    + ": nothing was changed; try again when it has finished.";
        }
        if (family.startsWith("SQLITE_IOERR")) {
            return "The disk that holds the book " + name
                    + " failed or was taken out: this entry was not written; check the disk and open the book again.";
        }
        if (family.startsWith("SQLITE_CONSTRAINT")) {
            return constraint(message);
        }
        return "The book " + name + " could not do this (" + code.name() + "); nothing was changed.";
    }

    static String notABook(Path book) {
        return book + " is not a Levelback book; choose another file.";
    }

    private static String constraint(String message) {
        String about = message.replaceFirst("(?s).*constraint failed(: )?", "").replaceAll("[)\\s]+$", "");
        if (message.contains("NOT NULL") || message.contains("FOREIGN KEY")) {
            return "What this entry belongs to is not in the book" + (about.isBlank() ? "" : " (" + about + ")")
                    + "; nothing was written.";
        }
        if (message.contains("lift.cow")) {
            return "This cow has a card of that day already; go on with that card.";
        }
        return "This entry goes against what the book holds" + (about.isBlank() ? "" : " (" + about + ")")
                + "; nothing was written.";
    }
}
