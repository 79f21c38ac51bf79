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
import levelback.clips.decode.internal.Memory;
import levelback.clips.decode.internal.Survey;
import levelback.clips.index.ClipIndex;

/** A local recording, scanned and indexed; immutable and safe to share. Holds no native object. */
public final class Clip {

    /** Files with up to so many pixels in all are decoded once when they are opened: about a second's work. */
    public static final long SHORT_PIXELS = 250_000_000L;

    private static final long READER_CACHE_BYTES = 256L << 20;

    private final ClipFacts facts;
    private final FrameTimes times;
    private final FrameOrder order;
    private final int threads;
    private final boolean decoded;
    private final Runnable distrusted;

    Clip(ClipFacts facts, FrameTimes times, FrameOrder order, int threads, boolean decoded, Runnable distrusted) {
        this.facts = facts;
        this.times = times;
        this.order = order;
        this.threads = threads;
        this.decoded = decoded;
        this.distrusted = distrusted;
    }

    /**
     * Scans and indexes a file. Where the packets alone can't be trusted to tell the order of the frames, and for every
     * short file (up to {@link #SHORT_PIXELS}), this decodes it once.
     *
     * @param file always a path, never an address
     * @param cancelled polled while reading
     * @throws ClipException with one sentence for a person
     */
    public static Clip open(Path file, BooleanSupplier cancelled) throws ClipException {
        return open(file, SHORT_PIXELS, cancelled);
    }

    /**
     * As {@link #open(Path, BooleanSupplier)}, with another bound for what counts as short. After a decode every damaged
     * picture is known and every later picture is held against its check sum.
     *
     * @param decodeUpToPixels files with at most so many pixels in all are decoded once whatever their packets look like
     */
    public static Clip open(Path file, long decodeUpToPixels, BooleanSupplier cancelled) throws ClipException {
        try (MediaFile media = MediaFile.open(file, cancelled)) {
            Survey survey = Survey.of(media, decodeUpToPixels, cancelled);
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
            return new Clip(facts, times, order, survey.threads(), survey.decoded(), () -> {});
        }
    }

    /**
     * As {@link #open(Path, long, BooleanSupplier)}, but a file that is known is not read again, and one that is not is
     * known from then on.
     *
     * @param known where indexes are kept
     */
    public static Clip open(Path file, long decodeUpToPixels, IndexCache known, BooleanSupplier cancelled)
            throws ClipException {
        Optional<Clip> before = known(file, decodeUpToPixels, known, cancelled);
        if (before.isPresent()) {
            return before.get();
        }
        Clip fresh = open(file, decodeUpToPixels, cancelled);
        known.keep(fresh);
        String fingerprint = fresh.facts.fingerprint();
        return new Clip(
                fresh.facts,
                fresh.times,
                fresh.order,
                fresh.threads,
                fresh.decoded,
                () -> known.forget(file, fingerprint));
    }

    /**
     * A file of which everything asked for is known already; empty where it has to be read.
     *
     * @param decodeUpToPixels files with at most so many pixels in all must have been decoded
     * @param known where indexes are kept
     */
    public static Optional<Clip> known(Path file, long decodeUpToPixels, IndexCache known, BooleanSupplier cancelled)
            throws ClipException {
        return known.find(file, cancelled).filter(clip -> clip.decoded || clip.pixels() > decodeUpToPixels);
    }

    private long pixels() {
        return (long) facts.width() * facts.height() * order.packets().count();
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
        return times.index();
    }

    /** Whether the whole file was decoded when it was opened, so that nothing about it is taken on trust. */
    public boolean decoded() {
        return decoded;
    }

    /** A reader of its frames, to be used and closed by one thread. */
    public FrameReader reader() throws ClipException {
        return reader(READER_CACHE_BYTES);
    }

    /**
     * A reader of its frames, to be used and closed by one thread.
     *
     * @param cacheBytes what the decoded pictures that it keeps for stepping back may weigh; two are always kept
     */
    public FrameReader reader(long cacheBytes) throws ClipException {
        return new ExactReader(pictures(), Memory.ofBytes(cacheBytes), () -> false);
    }

    /**
     * A reader for a clip on show: all of these together may take a quarter of the machine's memory, at most 1.5 GB.
     *
     * @param gone polled whenever the file is read, from any thread: once true, reading fails at once
     */
    public FrameReader readerOnShow(BooleanSupplier gone) throws ClipException {
        return new ExactReader(pictures(), Memory.shared(), gone);
    }

    private ExactReader.Source pictures() {
        return new ExactReader.Source(facts.file(), order, threads, facts.width(), facts.height(), distrusted);
    }

    /** The same after a decode that found nothing else. */
    Clip confirmed() {
        return new Clip(facts, times, order, threads, true, distrusted);
    }

    FrameTimes times() {
        return times;
    }

    FrameOrder order() {
        return order;
    }

    int threads() {
        return threads;
    }
}
