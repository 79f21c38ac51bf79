package levelback.store.book;

/** The book cannot do what was asked; the message is one clear sentence for a person. */
public class StoreException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    public StoreException(String sentence) {
        super(sentence);
    }

    public StoreException(String sentence, @org.jspecify.annotations.Nullable Throwable cause) {
        super(sentence, cause);
    }
}
