package levelback.clips.bench;

/**
 * How fast a machine steps through a recording. Times in milliseconds.
 *
 * @param decodeFps frames a second when decoding in sequence, nothing converted
 * @param indexMs opening the file and one pass over its packets, nothing decoded
 * @param stepForwardMs from the wish for the next frame until its picture stands in BGRA, in a steady walk
 * @param stepBackMs the same for the frame before
 * @param seekMs the same for frames drawn at random over the whole recording, nothing kept from before
 * @param frameDecodeMs one frame decoded in sequence, on average: the unit that the others are judged by
 * @param playDropped pictures that were not ready in time when played at the stream's own times
 * @param played pictures that were to be played
 * @param peakMemoryMb the most memory that the process had resident, in MiB
 */
public record StepResult(
        double decodeFps,
        double indexMs,
        Spread stepForwardMs,
        Spread stepBackMs,
        Spread seekMs,
        double frameDecodeMs,
        int playDropped,
        int played,
        double peakMemoryMb) {}
