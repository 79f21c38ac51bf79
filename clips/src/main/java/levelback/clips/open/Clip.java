package levelback.clips.open;

import java.nio.file.Path;
import java.util.function.BooleanSupplier;
import levelback.clips.decode.FrameReader;
import levelback.clips.index.ClipIndex;

/** A local recording, scanned and indexed; immutable and safe to share. Holds no native object. */
@SuppressWarnings({"UnusedMethod", "DoNotCallSuggester"})
public final class Clip {
    private final ClipFacts facts;
    private final ClipIndex index;

    private Clip(ClipFacts facts, ClipIndex index) {
        this.facts = facts;
        this.index = index;
    }

    /**
     * Scans and indexes a file.
     *
     * @param file always a path, never an address
     * @param cancelled polled while reading
     * @throws ClipException with one sentence for a person
     */
    public static Clip open(Path file, BooleanSupplier cancelled) throws ClipException {
        throw new ClipException(ClipException.Reason.NOT_A_RECORDING, "not written yet: " + file);
    }

    /** What the recording is. */
    public ClipFacts facts() {
        return facts;
    }

    /** Its frames. */
    public ClipIndex index() {
        return index;
    }

    /** A reader of its frames, to be used and closed by one thread. */
    public FrameReader reader() throws ClipException {
        throw new ClipException(ClipException.Reason.NOT_A_RECORDING, "not written yet");
    }
}
