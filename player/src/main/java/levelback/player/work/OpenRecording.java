package levelback.player.work;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import levelback.clips.look.FirstLook;
import levelback.clips.look.LookLimits;
import levelback.clips.open.Clip;
import levelback.clips.open.ClipException;
import levelback.clips.open.Fingerprint;
import levelback.clips.open.IndexCache;

/**
 * Opens a video file. One that this machine has not seen before is first looked at by another process with limits, so that
 * a file made to break a decoder, or broken enough, costs a sentence and never the desk.
 */
public final class OpenRecording implements AutoCloseable {

    private final KnownFiles known;
    private final IndexCache indexes;
    private final FirstLook look;

    /** For this user, with the usual limits. */
    public OpenRecording() {
        this(UserFolder.ofThisUser());
    }

    private OpenRecording(UserFolder user) {
        this(user, new FirstLook(LookLimits.USUAL, indexes(user)));
    }

    OpenRecording(UserFolder user, FirstLook look) {
        this.known = new KnownFiles(user);
        this.indexes = indexes(user);
        this.look = look;
    }

    /** Where a user's frame indexes lie. */
    static IndexCache indexes(UserFolder user) {
        return new IndexCache(user.cache().resolve("indexes"));
    }

    /** Opens one file for this user; blocking. */
    public static Clip once(Path file, BooleanSupplier cancelled) throws ClipException {
        try (OpenRecording opener = new OpenRecording()) {
            return opener.open(file, cancelled);
        }
    }

    /**
     * Opens a file; blocking. One that was opened before is not read again.
     *
     * @throws ClipException with one sentence for a person
     */
    public Clip open(Path file, BooleanSupplier cancelled) throws ClipException {
        Optional<Clip> before = Clip.known(file, Clip.SHORT_PIXELS, indexes, cancelled);
        if (before.isPresent()) {
            return before.get();
        }
        lookAt(file, cancelled);
        return Clip.open(file, Clip.SHORT_PIXELS, indexes, cancelled);
    }

    /**
     * Reads a file anew, whatever is known about it; blocking.
     *
     * @param decodeUpToPixels as for {@link Clip#open(Path, long, BooleanSupplier)}
     * @throws ClipException with one sentence for a person
     */
    public Clip open(Path file, long decodeUpToPixels, BooleanSupplier cancelled) throws ClipException {
        lookAt(file, cancelled);
        return Clip.open(file, decodeUpToPixels, cancelled);
    }

    private void lookAt(Path file, BooleanSupplier cancelled) throws ClipException {
        if (Files.isRegularFile(file) && Files.isReadable(file)) {
            String fingerprint = Fingerprint.quick(file);
            if (!known.known(fingerprint)) {
                look.at(file, Clip.SHORT_PIXELS, cancelled);
                known.keep(fingerprint);
            }
        }
    }

    @Override
    public void close() {
        look.close();
    }
}
