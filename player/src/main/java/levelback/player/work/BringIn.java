package levelback.player.work;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import levelback.clips.index.IndexedFrame;
import levelback.clips.open.Clip;
import levelback.clips.open.ClipException;
import levelback.clips.open.ClipFacts;
import levelback.store.book.Book;
import levelback.store.herd.Herd;
import levelback.store.herd.Visit;
import levelback.store.lane.Recording;
import levelback.store.lane.RecordingId;

/**
 * Brings a recording into a visit. The file stays where it lies and is never altered; the book keeps where it is, its
 * facts and its fingerprint.
 */
public final class BringIn {

    /** A camera that has lost its clock starts at 1904, 1970 or 1980; no recording of a cow is older than this. */
    private static final LocalDate OLDEST = LocalDate.of(2000, 1, 1);

    private final Book book;
    private final Clock clock;

    public BringIn(Book book) {
        this(book, Clock.systemUTC());
    }

    /** @param clock for a file that does not say when it was made, in a herd with no visit on show */
    public BringIn(Book book, Clock clock) {
        this.book = book;
        this.clock = clock;
    }

    /**
     * What came in.
     *
     * @param visit the visit it went to
     * @param wasThere the same file had come in before, and nothing was changed but perhaps where it lies
     */
    public record Arrival(Recording recording, Visit visit, boolean wasThere) {}

    /**
     * Reads the file and keeps it. Callers that hold the book's writer meanwhile should read first and {@link #keep} then.
     *
     * @param onShow the visit it goes to if the file does not say when it was made
     * @throws ClipException with one sentence if the file cannot be read; the book is then unchanged
     */
    public Arrival bringIn(Path file, Herd herd, Optional<Visit> onShow, BooleanSupplier cancelled)
            throws ClipException {
        return keep(OpenRecording.once(file, cancelled), herd, onShow);
    }

    /** Keeps a recording that has been read. */
    public Arrival keep(Clip clip, Herd herd, Optional<Visit> onShow) {
        ClipFacts facts = clip.facts();
        Path file = facts.file().toAbsolutePath().normalize();
        for (Visit visit : book.herd().visits(herd.id())) {
            Optional<Recording> before = book.lane().byFingerprint(visit.id(), facts.fingerprint());
            if (before.isPresent()) {
                return new Arrival(foundAgain(before.get(), file), visit, true);
            }
        }
        Visit visit = visitOf(facts, herd, onShow);
        Recording recording = new Recording(
                RecordingId.fresh(),
                visit.id(),
                file,
                facts.fingerprint(),
                facts.codec(),
                facts.width(),
                facts.height(),
                facts.rotationDegrees(),
                facts.timeBase(),
                facts.frameCount(),
                facts.startUs().orElse(0),
                facts.durationUs().orElseGet(() -> spanUs(clip)),
                facts.recordedAt().filter(at -> believable(at, herd)));
        book.lane().put(recording);
        return new Arrival(recording, visit, false);
    }

    private Recording foundAgain(Recording before, Path file) {
        if (before.file().equals(file) || Files.exists(before.file())) {
            return before;
        }
        Recording moved = new Recording(
                before.id(),
                before.visit(),
                file,
                before.fingerprint(),
                before.codec(),
                before.width(),
                before.height(),
                before.rotationDegrees(),
                before.timeBase(),
                before.frameCount(),
                before.startUs(),
                before.durationUs(),
                before.recordedAt());
        book.lane().put(moved);
        return moved;
    }

    private Visit visitOf(ClipFacts facts, Herd herd, Optional<Visit> onShow) {
        Optional<Instant> recordedAt = facts.recordedAt().filter(at -> believable(at, herd));
        if (recordedAt.isPresent()) {
            return book.herd()
                    .visitOn(herd.id(), recordedAt.get().atZone(herd.zone()).toLocalDate());
        }
        return onShow.orElseGet(
                () -> book.herd().visitOn(herd.id(), LocalDate.ofInstant(clock.instant(), herd.zone())));
    }

    private boolean believable(Instant at, Herd herd) {
        return !LocalDate.ofInstant(at, herd.zone()).isBefore(OLDEST)
                && at.isBefore(clock.instant().plus(Duration.ofDays(1)));
    }

    private static long spanUs(Clip clip) {
        IndexedFrame first = clip.index().frames().get(0);
        IndexedFrame last = clip.index().frames().get(clip.index().frames().size() - 1);
        return last.timeUs() - first.timeUs();
    }
}
