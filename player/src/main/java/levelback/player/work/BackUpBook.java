package levelback.player.work;

import java.nio.file.Path;
import levelback.store.book.BackupFailed;
import levelback.store.book.BookBackup;

/** Makes a backup of a book or brings one back, with failures told apart: what was given, or the disk. */
public final class BackUpBook {

    /** How many of the newest backups stay where nobody says otherwise. */
    public static final int NEWEST = 10;

    private final BookBackup backup = new BookBackup();

    /**
     * Makes a backup.
     *
     * @param newest how many of the newest stay
     * @throws CannotBeDone with one sentence where there is no room or the folder may not be written
     */
    public BookBackup.Made make(Path book, Path folder, int newest) {
        if (newest < 1) {
            throw new BadInput("At least one backup must be kept; give 1 or more.");
        }
        try {
            return backup.make(book, folder, newest);
        } catch (BackupFailed failed) {
            throw new CannotBeDone(String.valueOf(failed.getMessage()), failed);
        }
    }

    /** Brings a backup back; the present book is kept beside. */
    public BookBackup.Restored restore(Path backupFile, Path book) {
        try {
            return backup.restore(backupFile, book);
        } catch (BackupFailed failed) {
            throw new CannotBeDone(String.valueOf(failed.getMessage()), failed);
        }
    }
}
