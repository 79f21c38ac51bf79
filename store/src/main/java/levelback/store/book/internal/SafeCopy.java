package levelback.store.book.internal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import levelback.store.book.BackupFailed;
import levelback.store.book.BookCheck;
import levelback.store.book.StoreException;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;
import org.sqlite.SQLiteConnection;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/** A copy of a book that is known to be whole. */
public final class SafeCopy {

    private SafeCopy() {}

    /** The book's UUID. */
    public static String identity(Path book) {
        try (Handle handle = Connections.open(book, Connections.plain())) {
            return handle.createQuery("SELECT uuid FROM book")
                    .mapTo(String.class)
                    .one();
        } catch (RuntimeException e) {
            throw SqlSentences.of(e, book);
        }
    }

    /**
     * Copies one committed state of a book, page by page, while others may write, and looks the copy through.
     *
     * @param folder named in the sentence where there is no room
     * @return the look through the copy, without a problem
     */
    public static BookCheck take(Path book, Path copy, Path folder) {
        Map<String, Long> rows;
        try (Handle source = Connections.open(book, Connections.plain())) {
            // The count and the copy read the same snapshot: the copier goes on in a transaction that is open.
            source.execute("BEGIN");
            rows = rows(source);
            int result = source.getConnection()
                    .unwrap(SQLiteConnection.class)
                    .getDatabase()
                    .backup("main", copy.toAbsolutePath().toString(), null);
            source.execute("COMMIT");
            requireCopied(SQLiteErrorCode.getErrorCode(result), folder);
        } catch (SQLException e) {
            throw failed(e, folder);
        } catch (RuntimeException e) {
            throw damaged(e, book);
        }
        return looked(book, copy, rows);
    }

    private static void requireCopied(SQLiteErrorCode result, Path folder) {
        if (result == SQLiteErrorCode.SQLITE_OK) {
            return;
        }
        if (result == SQLiteErrorCode.SQLITE_FULL) {
            throw new BackupFailed("There is no room left in " + folder
                    + ": the copy was taken away again and nothing else was touched; free some space or choose another"
                    + " folder.");
        }
        if (result.name().startsWith("SQLITE_CORRUPT") || result == SQLiteErrorCode.SQLITE_NOTADB) {
            throw new StoreException(
                    "The file to copy is damaged: no copy was made, and every earlier backup is as it was.");
        }
        throw new BackupFailed("The copy in " + folder + " could not be written (" + result.name()
                + "): it was taken away again; check the disk and try once more.");
    }

    private static BackupFailed failed(SQLException e, Path folder) {
        return new BackupFailed(
                "The copy in " + folder + " could not be written; check the disk and try once more.", e);
    }

    private static BookCheck looked(Path book, Path copy, Map<String, Long> rows) {
        String name = String.valueOf(book.getFileName());
        try (Handle handle = Connections.open(copy, Connections.plain())) {
            // One file and nothing beside it, so that it can be carried away.
            handle.createQuery("PRAGMA journal_mode = DELETE")
                    .mapTo(String.class)
                    .one();
            BookCheck check = Checkup.of(handle);
            List<String> problems = check.problems();
            if (!problems.isEmpty()) {
                throw new StoreException(
                        name + " is not whole, so no copy of it was kept and every earlier backup is as" + " it was: "
                                + problems.get(0));
            }
            if (!rows(handle).equals(rows)) {
                throw new BackupFailed("The copy of " + name
                        + " does not hold as many rows as the book: it was taken away again; check the disk.");
            }
            return check;
        } catch (RuntimeException e) {
            throw damaged(e, book);
        }
    }

    private static RuntimeException damaged(RuntimeException e, Path book) {
        for (Throwable t = e; t != null; t = t.getCause()) {
            if (t instanceof SQLiteException sql && sql.getResultCode().name().matches("SQLITE_(CORRUPT|NOTADB).*")) {
                return new StoreException(
                        book.getFileName()
                                + " is damaged, so no copy of it was kept and every earlier backup is as it was.",
                        e);
            }
        }
        return SqlSentences.of(e, book);
    }

    private static Map<String, Long> rows(Handle handle) {
        Map<String, Long> rows = new TreeMap<>();
        for (String table : handle.createQuery(
                        "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite%'")
                .mapTo(String.class)
                .list()) {
            rows.put(
                    table,
                    handle.createQuery("SELECT count(*) FROM \"" + table.replace("\"", "\"\"") + "\"")
                            .mapTo(Long.class)
                            .one());
        }
        return rows;
    }

    /**
     * Makes sure that nobody has the book open, and brings what is in its log into the file. A damaged book passes: it is
     * only going to be set aside.
     *
     * @throws StoreException with one sentence if a desk or another program has it open
     */
    public static void requireNobody(Path book) {
        try (Handle handle = Connections.open(book, Connections.plain())) {
            // SQLite leaves the log only for the one connection that is alone.
            String mode = handle.createQuery("PRAGMA journal_mode = DELETE")
                    .mapTo(String.class)
                    .one();
            if (!mode.equalsIgnoreCase("delete")) {
                throw inUse(book, null);
            }
            handle.execute("BEGIN EXCLUSIVE");
            handle.execute("ROLLBACK");
        } catch (RuntimeException e) {
            if (e instanceof StoreException) {
                throw e;
            }
            for (Throwable t = e; t != null; t = t.getCause()) {
                if (t instanceof SQLiteException sql
                        && sql.getResultCode().name().matches("SQLITE_(BUSY|LOCKED).*")) {
                    throw inUse(book, e);
                }
            }
            // Damaged or no book at all: it goes aside as it is.
        }
    }

    private static StoreException inUse(Path book, @Nullable Throwable cause) {
        return new StoreException(
                "The book " + book.getFileName()
                        + " is open in a desk or another program: nothing was changed; close it there and restore again.",
                cause);
    }

    /** Takes away a copy that does not count. */
    public static void forget(Path copy) {
        for (String beside : List.of("", "-journal", "-wal", "-shm")) {
            try {
                Files.deleteIfExists(copy.resolveSibling(copy.getFileName() + beside));
            } catch (IOException left) {
                // Its name says that it is only a part.
            }
        }
    }
}
