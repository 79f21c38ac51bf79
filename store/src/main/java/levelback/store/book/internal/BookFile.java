package levelback.store.book.internal;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Arrays;
import java.util.UUID;
import levelback.store.book.StoreException;
import levelback.store.schema.Schema;
import org.jdbi.v3.core.Handle;

/** The file of a book before it is opened: is it one, which schema has it, and what brings it up to date. */
public final class BookFile {

    private static final byte[] MAGIC = "SQLite format 3\0".getBytes(StandardCharsets.US_ASCII);

    private static final DateTimeFormatter STAMP =
            DateTimeFormatter.ofPattern("yyyyMMdd-HHmmss").withZone(ZoneOffset.UTC);

    private final Path file;
    private final Schema schema;
    private final Clock clock;

    /** A file of that name, whether it is there or not. */
    public BookFile(Path file, Schema schema, Clock clock) {
        this.file = file.toAbsolutePath().normalize();
        this.schema = schema;
        this.clock = clock;
    }

    /** Whether there is anything in the file. */
    public boolean isThere() {
        try {
            return Files.exists(file) && (Files.isDirectory(file) || Files.size(file) > 0);
        } catch (IOException e) {
            throw unreadable(e);
        }
    }

    /**
     * Makes sure that the file is a book that this build can read, without changing it.
     *
     * @throws StoreException with one sentence if not
     */
    public int requireBook() {
        if (!Files.exists(file)) {
            throw new StoreException("There is no book " + file + "; check the name, or make one.");
        }
        if (!Files.isRegularFile(file)) {
            throw new StoreException(file + " is not a file; give the name of a book.");
        }
        try (InputStream in = Files.newInputStream(file)) {
            if (!Arrays.equals(in.readNBytes(MAGIC.length), MAGIC)) {
                throw new StoreException(SqlSentences.notABook(file));
            }
        } catch (IOException e) {
            throw unreadable(e);
        }
        try (Handle look = Connections.open(file, Connections.plain())) {
            int id = look.createQuery("PRAGMA application_id")
                    .mapTo(Integer.class)
                    .one();
            int version =
                    look.createQuery("PRAGMA user_version").mapTo(Integer.class).one();
            look.createQuery("SELECT count(*) FROM sqlite_schema")
                    .mapTo(Integer.class)
                    .one();
            if (id != Schema.APPLICATION_ID || version < 1) {
                throw new StoreException(SqlSentences.notABook(file));
            }
            if (version > schema.version()) {
                throw new StoreException("The book " + file.getFileName() + " was written by a newer Levelback (schema "
                        + version + ", this one knows " + schema.version()
                        + "): update Levelback to open it; nothing was changed.");
            }
            return version;
        } catch (RuntimeException e) {
            throw SqlSentences.of(e, file);
        }
    }

    /** Brings an older book up to date, in one transaction, after a copy of it beside it. */
    public void bringUpToDate(int version) {
        if (version == schema.version()) {
            return;
        }
        Path copy = file.resolveSibling(
                file.getFileName() + ".schema" + version + "-" + STAMP.format(clock.instant()) + ".backup");
        try (Pen pen = new Pen(Connections.open(file))) {
            pen.run("VACUUM INTO ?", copy.toString());
            migrate(pen, version);
        } catch (RuntimeException e) {
            throw SqlSentences.of(e, file);
        }
    }

    /**
     * Makes an empty book.
     *
     * @throws StoreException with one sentence if there is a file already or the folder may not be written
     */
    public void make() {
        if (isThere()) {
            throw new StoreException(file + " is there already; open it, or give another name.");
        }
        Path folder = file.getParent();
        try {
            if (folder != null) {
                Files.createDirectories(folder);
            }
        } catch (IOException e) {
            throw new StoreException(
                    "The folder " + folder + " for the book is not there and cannot be made; choose another one.", e);
        }
        if (folder != null && !Files.isWritable(folder)) {
            throw new StoreException(
                    "The folder " + folder + " may not be written; put the book in a folder of your own.");
        }
        try (Pen pen = new Pen(Connections.open(file))) {
            migrate(pen, 0);
        } catch (RuntimeException e) {
            throw SqlSentences.of(e, file);
        }
    }

    private void migrate(Pen pen, int version) {
        pen.begin();
        try {
            // Another desk may have been quicker.
            int now = (int) pen.number("PRAGMA user_version");
            if (now == version) {
                for (int next = version; next < schema.version(); next++) {
                    pen.script(schema.scripts().get(next));
                }
                if (version == 0) {
                    pen.run(
                            "INSERT INTO book (n, uuid, made_us) VALUES (1, ?, ?)",
                            UUID.randomUUID().toString(),
                            Columns.micros(Instant.now(clock)));
                }
                pen.script("PRAGMA application_id = " + Schema.APPLICATION_ID);
                pen.script("PRAGMA user_version = " + schema.version());
            }
            pen.commit();
        } catch (RuntimeException e) {
            pen.rollback();
            throw e;
        }
    }

    private StoreException unreadable(IOException e) {
        return new StoreException("The book " + file + " cannot be read; check that you may read it.", e);
    }
}
