package levelback.clips.decode.internal;

import java.util.Arrays;
import java.util.concurrent.atomic.AtomicLongArray;

/**
 * The CRC32C of every picture's planes, as far as it is known: filled while a decode from the start of the file goes on, and
 * read meanwhile by those who show pictures. Thread-safe.
 */
final class Checks {

    private static final long UNKNOWN = 0;
    private static final long KNOWN = 1L << 32;
    private static final long CRC = KNOWN - 1;
    /** Seen by decoding from a key packet and not from the start of the file. */
    private static final long TENTATIVE = KNOWN << 1;

    private final AtomicLongArray ofFrame;

    /** None known. */
    Checks(int frames) {
        ofFrame = new AtomicLongArray(frames);
    }

    /** All known. */
    static Checks of(int[] crcs, int frames) {
        Checks all = new Checks(frames);
        for (int i = 0; i < frames; i++) {
            all.put(i, crcs[i]);
        }
        return all;
    }

    void put(int frame, int crc) {
        ofFrame.set(frame, KNOWN | (crc & CRC));
    }

    /** Puts what a decode from a key packet gave, unless a decode from the start has been there. */
    void putTentative(int frame, int crc) {
        ofFrame.compareAndSet(frame, UNKNOWN, KNOWN | TENTATIVE | (crc & CRC));
    }

    /** Whether the check sum is that of a decode from the start. */
    boolean certain(int frame) {
        long known = ofFrame.get(frame);
        return known != UNKNOWN && (known & TENTATIVE) == 0;
    }

    boolean known(int frame) {
        return ofFrame.get(frame) != UNKNOWN;
    }

    /** Whether a picture may be the right one: it has the check sum that is known, or none is known. */
    boolean allows(int frame, int crc) {
        long known = ofFrame.get(frame);
        return known == UNKNOWN || (int) known == crc;
    }

    /** How many frames from the first on are known for certain, without a gap. */
    int knownFromStart() {
        int frame = 0;
        while (frame < ofFrame.length() && certain(frame)) {
            frame++;
        }
        return frame;
    }

    /** Writes those that are known from the first frame on without a gap. */
    void write(IndexBytes to) {
        int[] crcs = new int[knownFromStart()];
        Arrays.setAll(crcs, frame -> (int) ofFrame.get(frame));
        to.ints(crcs);
    }

    static Checks read(IndexBytes from, int frames) {
        int[] crcs = from.readInts();
        if (crcs.length > frames) {
            throw new IllegalArgumentException("more check sums than frames");
        }
        Checks some = new Checks(frames);
        for (int i = 0; i < crcs.length; i++) {
            some.put(i, crcs[i]);
        }
        return some;
    }
}
