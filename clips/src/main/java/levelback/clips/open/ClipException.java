package levelback.clips.open;

import java.util.Objects;

/** A recording that cannot be read, with the reason in a form a caller can act on. */
public class ClipException extends Exception {

    private static final long serialVersionUID = 1L;

    /** Why a recording cannot be read. */
    public enum Reason {
        /** No such file, or not a plain file. */
        NOT_A_FILE,
        /** The file is not one of the film formats that are let in. */
        NOT_A_RECORDING,
        /** There is no picture stream in it. */
        NO_PICTURES,
        /** It is a recording, but so broken that no frame comes out. */
        BROKEN,
        /** Another process has looked at it and did not survive, or not within its limits. */
        UNSAFE,
        /** A frame number or a time past the end. */
        PAST_THE_END,
        /** A frame that the decoder will not give. */
        UNREADABLE_FRAME,
        /** Stopped by the user. */
        CANCELLED,
        /** Writing failed. */
        CANNOT_WRITE
    }

    private final Reason reason;

    /**
     * @param reason the kind of failure
     * @param sentence one clear sentence for a person: what, where, what to do
     */
    public ClipException(Reason reason, String sentence) {
        super(sentence);
        this.reason = Objects.requireNonNull(reason, "reason");
    }

    /** The kind of failure. */
    public Reason reason() {
        return reason;
    }
}
