package levelback.clips.open;

import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.BooleanSupplier;
import levelback.clips.decode.FrameReader;
import levelback.clips.decode.internal.DamageReport;
import levelback.clips.decode.internal.ExactReader;
import levelback.clips.decode.internal.FrameOrder;
import levelback.clips.decode.internal.FrameTimes;
import levelback.clips.decode.internal.MediaFile;
import levelback.clips.decode.internal.Survey;
import levelback.clips.index.ClipIndex;

/** A local recording, scanned and indexed; immutable and safe to share. Holds no native object. */
public final class Clip {
    private final ClipFacts facts;
    private final ClipIndex index;
    private final FrameOrder order;
    private final int threads;

    private Clip(ClipFacts facts, ClipIndex index, FrameOrder order, int threads) {
        this.facts = facts;
        this.index = index;
        this.order = order;
        this.threads = threads;
    }

    /**
     * Scans and indexes a file. Where the packets alone can't be trusted to tell the order of the frames, and for every
     * short file, this decodes it once.
     *
     * @param file always a path, never an address
     * @param cancelled polled while reading
     * @throws ClipException with one sentence for a person
     */
    public static Clip open(Path file, BooleanSupplier cancelled) throws ClipException {
        return open(file, false, cancelled);
    }

    /** As {@link #open}, and decodes the whole file however long it is, so that every damaged picture is known. */
    public static Clip openProven(Path file, BooleanSupplier cancelled) throws ClipException {
        return open(file, true, cancelled);
    }

    private static Clip open(Path file, boolean proven, BooleanSupplier cancelled) throws ClipException {
        try (MediaFile media = MediaFile.open(file, cancelled)) {
            Survey survey = Survey.of(media, proven, cancelled);
            FrameOrder order = survey.order();
            FrameTimes times = new FrameTimes(media, order);
            List<ClipFacts.Damage> damage = DamageReport.of(media, survey, times);
            long startUs = times.index().frames().get(0).timeUs();
            ClipFacts facts = new ClipFacts(
                    file,
                    media.container(),
                    media.codec(),
                    survey.shape().width(),
                    survey.shape().height(),
                    survey.shape().pixelFormat(),
                    survey.shape().rotationDegrees(),
                    media.timeBase(),
                    order.frames(),
                    OptionalLong.of(startUs),
                    OptionalLong.of(times.endUs() - startUs),
                    times.averageFps(),
                    times.constant(),
                    survey.interlaced(),
                    survey.shape().sampleAspectRatio(),
                    recordedAt(media),
                    damage,
                    Fingerprint.quick(file));
            return new Clip(facts, times.index(), order, survey.threads());
        }
    }

    private static Optional<Instant> recordedAt(MediaFile media) {
        return media.note("creation_time")
                .or(() -> media.note("com.apple.quicktime.creationdate"))
                .flatMap(Clip::instant);
    }

    private static Optional<Instant> instant(String text) {
        try {
            return Optional.of(Instant.parse(text.strip()));
        } catch (DateTimeException notUtc) {
            try {
                return Optional.of(
                        OffsetDateTime.parse(text.strip(), DateTimeFormatter.ofPattern("yyyy-MM-dd'T'HH:mm:ssXX"))
                                .toInstant());
            } catch (DateTimeException unreadable) {
                return Optional.empty();
            }
        }
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
        return new ExactReader(facts.file(), order, threads);
    }
}
