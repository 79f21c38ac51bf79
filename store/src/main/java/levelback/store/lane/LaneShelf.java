package levelback.store.lane;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import levelback.store.herd.CowId;
import levelback.store.herd.VisitId;

/** Recordings, passes and gate reads of a book. Blocking; see {@link levelback.store.book.Book}. */
public interface LaneShelf {

    void put(Recording recording);

    Optional<Recording> recording(RecordingId recording);

    /** The recording with this fingerprint in this visit, if it came in before. */
    Optional<Recording> byFingerprint(VisitId visit, String fingerprint);

    List<Recording> recordingsOf(VisitId visit);

    /** Adds a pass or corrects it (its span or its cow); the earlier state stays in the history. */
    void put(Pass pass);

    /** Passes of a visit in milking order: by recording time, then first frame. */
    List<Pass> passesOf(VisitId visit);

    Optional<Pass> pass(PassId pass);

    /** Passes of a cow, newest first. */
    List<Pass> passesOf(CowId cow);

    /** Adds a gate read; the same tag, reader and time again changes nothing. Returns whether it was new. */
    boolean putRead(VisitId visit, Instant at, String tag, String reader);

    /** Gate reads of a visit, in order of time. */
    List<GateRead> readsOf(VisitId visit);
}
