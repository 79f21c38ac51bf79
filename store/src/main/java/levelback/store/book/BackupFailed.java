package levelback.store.book;

/** A backup was asked for rightly and could not be made: no room, or a folder that may not be written. */
public final class BackupFailed extends StoreException {

    private static final long serialVersionUID = 1L;

    public BackupFailed(String sentence) {
        super(sentence);
    }

    public BackupFailed(String sentence, Throwable cause) {
        super(sentence, cause);
    }
}
