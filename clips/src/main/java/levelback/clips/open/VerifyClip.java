package levelback.clips.open;

import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.function.DoubleConsumer;
import levelback.clips.decode.Span;
import levelback.clips.decode.internal.Verification;
import levelback.clips.open.ClipException.Reason;

/**
 * Makes certain what an index from the packets alone takes on trust: decodes the whole recording once, in the background,
 * while others step through it. Afterwards its frames and its damage are those of a full decode, and every picture is held
 * against its check sum.
 */
public final class VerifyClip {

    private static final long NANOS_BETWEEN_SAVES = 20_000_000_000L;

    private final IndexCache known;
    private final int threads;

    /**
     * @param known where what was found is kept, also when it is stopped half way
     * @param threads of the decoder; one leaves the rest of the machine to the person in front of it
     */
    public VerifyClip(IndexCache known, int threads) {
        this.known = known;
        this.threads = Math.max(1, threads);
    }

    /**
     * Verifies a clip; blocking. Stopped and begun again, also after another start of the program, it goes on where it was.
     *
     * @param first passes that are wanted first
     * @param progress is told how far it is, from 0 to 1
     * @param cancelled polled between pictures; may wait while others need the machine
     * @return the clip with nothing taken on trust; the one given, where that is so already
     * @throws ClipException with {@link Reason#CANCELLED} when stopped, or if the file can't be read any more
     */
    public Clip verify(Clip clip, List<Span> first, DoubleConsumer progress, BooleanSupplier cancelled)
            throws ClipException {
        if (clip.decoded()) {
            return clip;
        }
        ClipFacts facts = clip.facts();
        long[] saved = {System.nanoTime()};
        Verification.Outcome outcome = Verification.run(
                facts.file(), clip.order(), threads, facts.interlaced(), first, cancelled, fraction -> {
                    if (System.nanoTime() - saved[0] > NANOS_BETWEEN_SAVES) {
                        known.keep(clip);
                        saved[0] = System.nanoTime();
                    }
                    progress.accept(fraction);
                });
        Clip certain;
        switch (outcome) {
            case CONFIRMED -> certain = clip.confirmed();
            case DIFFERS -> certain = Clip.open(facts.file(), Long.MAX_VALUE, cancelled);
            default -> {
                known.keep(clip);
                throw new ClipException(
                        Reason.CANCELLED, "Looking through " + facts.file() + " was stopped; it goes on next time.");
            }
        }
        known.keep(certain);
        return certain;
    }
}
