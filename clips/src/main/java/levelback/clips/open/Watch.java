package levelback.clips.open;

import java.util.function.BooleanSupplier;

/** Looks on while a recording is read, and may call it off; may be given wherever a file is opened. */
public interface Watch extends BooleanSupplier {

    /** Whether to stop. */
    @Override
    boolean getAsBoolean();

    /**
     * Told now and then, on the thread that reads.
     *
     * @param decoding whether its pictures are being decoded; else only its packets are read
     * @param fraction of the file that is done, 0 to 1
     */
    void at(boolean decoding, double fraction);

    /** Tells a supplier that is a watch. */
    static void tell(BooleanSupplier cancelled, boolean decoding, double fraction) {
        if (cancelled instanceof Watch watch) {
            watch.at(decoding, Math.min(1, Math.max(0, fraction)));
        }
    }
}
