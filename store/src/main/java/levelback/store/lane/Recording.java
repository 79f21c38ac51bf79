package levelback.store.lane;

import java.nio.file.Path;
import java.time.Instant;
import java.util.Optional;
import levelback.scoring.value.TimeBase;
import levelback.store.herd.VisitId;

/**
 * A recording as it came from the camera; referred to where it lies, never altered.
 *
 * @param file where it was last seen
 * @param fingerprint length and SHA-256 of the first, middle and last MiB
 * @param recordedAt when frame 0 was taken, UTC, where known
 */
public record Recording(
        RecordingId id,
        VisitId visit,
        Path file,
        String fingerprint,
        String codec,
        int width,
        int height,
        int rotationDegrees,
        TimeBase timeBase,
        int frameCount,
        long startUs,
        long durationUs,
        Optional<Instant> recordedAt) {}
