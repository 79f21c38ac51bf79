package levelback.store.book;

import java.io.IOException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Clock;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToLongFunction;
import levelback.store.book.internal.BookFile;
import levelback.store.book.internal.SafeCopy;
import levelback.store.schema.Schema;

/**
 * Backups of a book, taken while a desk may be writing in it. A copy counts only after it was opened, found whole
 * (integrity, foreign keys) and held against the row counts of the very state it was taken of; it is written beside and
 * renamed, so that a broken copy never stands where a backup is looked for. Every method blocks on the disk.
 */
public final class BookBackup {

    private static final DateTimeFormatter STAMP =
            DateTimeFormatter.ofPattern("yyyyMMdd-HHmmss").withZone(ZoneOffset.UTC);
    private static final String PART = ".part";

    private final Clock clock;
    private final ToLongFunction<Path> room;

    public BookBackup() {
        this(Clock.systemUTC(), BookBackup::usable);
    }

    /** @param room bytes free where a folder lies, for a test of a full disk */
    BookBackup(Clock clock, ToLongFunction<Path> room) {
        this.clock = clock;
        this.room = room;
    }

    /**
     * A backup that counts.
     *
     * @param bytes length of the file
     * @param check what a look through the copy found: no problem
     * @param kept backups of this book in the folder, newest first
     * @param removed older ones that the rotation took away
     */
    public record Made(Path file, long bytes, BookCheck check, List<BackupRotation.Kept> kept, List<Path> removed) {
        public Made {
            kept = List.copyOf(kept);
            removed = List.copyOf(removed);
        }
    }

    /**
     * A book brought back.
     *
     * @param keptAs the book that stood there before, under its new name; empty where there was none
     */
    public record Restored(Path book, BookCheck check, Optional<Path> keptAs) {}

    /**
     * Makes a backup and takes away those that the rotation no longer needs.
     *
     * @param newest how many of the newest to keep, at least 1; the newest of every month stays beside them
     * @throws BackupFailed with one sentence where there is no room or the folder may not be written; nothing is left
     *     behind and every earlier backup is as it was
     * @throws StoreException with one sentence where the book is none, or is damaged
     */
    public Made make(Path book, Path folder, int newest) {
        if (newest < 1) {
            throw new IllegalArgumentException("keep at least one backup");
        }
        file(book).requireBook();
        requireFolder(folder);
        requireRoom(book, folder);
        String stem = stem(book) + "-" + SafeCopy.identity(book).substring(0, 8) + "-";
        Path target = free(folder, stem + STAMP.format(clock.instant()));
        Path part = target.resolveSibling(target.getFileName() + PART);
        BookCheck check = copied(book, part, folder);
        move(part, target);
        BackupRotation.Plan plan = BackupRotation.of(folder, stem, newest);
        List<Path> removed = new ArrayList<>();
        for (Path old : plan.superfluous()) {
            if (deleted(old)) {
                removed.add(old);
            }
        }
        return new Made(target, length(target), check, plan.kept(), removed);
    }

    /**
     * Puts a backup in the place of a book. The backup is looked through first; the present book is kept beside under
     * another name, also where it is damaged.
     *
     * @throws StoreException with one sentence where the backup is none or is damaged, or a desk has the book open; the
     *     book is then as it was
     */
    public Restored restore(Path backup, Path book) {
        Path place = book.toAbsolutePath().normalize();
        file(backup).requireBook();
        if (Files.exists(place) && same(backup, place)) {
            throw new StoreException(
                    "The backup and the book are one file, " + backup + "; name the backup to go back to.");
        }
        Path folder = place.getParent() == null ? place : place.getParent();
        requireFolder(folder);
        requireRoom(backup, folder);
        Path part = place.resolveSibling(place.getFileName() + ".restored" + PART);
        BookCheck check = copied(backup, part, folder);
        Optional<Path> kept;
        try {
            kept = setAside(place);
        } catch (RuntimeException inUse) {
            SafeCopy.forget(part);
            throw inUse;
        }
        try {
            move(part, place);
        } catch (RuntimeException failed) {
            kept.ifPresent(old -> move(old, place));
            SafeCopy.forget(part);
            throw failed;
        }
        return new Restored(place, check, kept);
    }

    /** The present book out of the way, with what SQLite keeps beside it: a stale log must never meet another book. */
    private Optional<Path> setAside(Path book) {
        if (Files.exists(book)) {
            SafeCopy.requireNobody(book);
        }
        Path aside = free(
                book.getParent() == null ? book : book.getParent(),
                stem(book) + "-before-restore-" + STAMP.format(clock.instant()));
        boolean was = Files.exists(book);
        if (was) {
            move(book, aside);
        }
        for (String beside : List.of("-wal", "-shm", "-journal")) {
            Path log = book.resolveSibling(book.getFileName() + beside);
            if (Files.exists(log)) {
                move(log, aside.resolveSibling(aside.getFileName() + beside));
            }
        }
        return was ? Optional.of(aside) : Optional.empty();
    }

    private static BookCheck copied(Path from, Path part, Path folder) {
        SafeCopy.forget(part);
        boolean done = false;
        try {
            BookCheck check = SafeCopy.take(from, part, folder);
            done = true;
            return check;
        } finally {
            if (!done) {
                SafeCopy.forget(part);
            }
        }
    }

    private static BookFile file(Path book) {
        return new BookFile(book, Schema.ofThisBuild(), Clock.systemUTC());
    }

    private static String stem(Path book) {
        return String.valueOf(book.getFileName()).replaceFirst("\\.levelback$", "");
    }

    private static Path free(Path folder, String name) {
        Path file = folder.resolve(name + ".levelback");
        for (int n = 2; Files.exists(file); n++) {
            file = folder.resolve(name + "-" + n + ".levelback");
        }
        return file;
    }

    private static void requireFolder(Path folder) {
        try {
            Files.createDirectories(folder);
        } catch (IOException e) {
            throw new BackupFailed("The folder " + folder + " is not there and cannot be made; choose another one.", e);
        }
        if (!Files.isWritable(folder)) {
            throw new BackupFailed("The folder " + folder + " may not be written; choose one of your own.");
        }
    }

    private void requireRoom(Path from, Path folder) {
        long needed = length(from);
        long free = room.applyAsLong(folder);
        if (free < needed) {
            throw new BackupFailed(
                    "There is no room for a copy of the book in " + folder + ": it needs " + megabytes(needed) + " and "
                            + megabytes(free) + " are free; free some space or choose another folder.");
        }
    }

    private static String megabytes(long bytes) {
        return (bytes + 1_048_575) / 1_048_576 + " MB";
    }

    private static long usable(Path folder) {
        try {
            return Files.getFileStore(folder).getUsableSpace();
        } catch (IOException unknown) {
            return Long.MAX_VALUE;
        }
    }

    private static long length(Path file) {
        try {
            Path log = file.resolveSibling(file.getFileName() + "-wal");
            return Files.size(file) + (Files.exists(log) ? Files.size(log) : 0);
        } catch (IOException e) {
            throw new StoreException(file + " cannot be read; check that you may read it.", e);
        }
    }

    private static boolean same(Path one, Path other) {
        try {
            return Files.isSameFile(one, other);
        } catch (IOException e) {
            return false;
        }
    }

    private static boolean deleted(Path file) {
        try {
            return Files.deleteIfExists(file);
        } catch (IOException kept) {
            // One backup too many is no harm.
            return false;
        }
    }

    private static void move(Path from, Path to) {
        try {
            try {
                Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
            } catch (AtomicMoveNotSupportedException e) {
                Files.move(from, to);
            }
        } catch (IOException e) {
            throw new BackupFailed(
                    "The file " + from + " could not be renamed to " + to.getFileName()
                            + "; check that its folder may be written.",
                    e);
        }
    }
}
