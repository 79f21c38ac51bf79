package levelback.clips.drawn.truth;

import java.util.List;

/**
 * All that a drawn recording truly holds.
 *
 * @param frameCount frames in the film
 * @param passes in order of entering
 * @param footfalls by pass, then by time
 * @param marks by pass, then by frame
 * @param events by pass, then by time
 */
public record RecordingTruth(
        int frameCount,
        List<PassTruth> passes,
        List<FootfallTruth> footfalls,
        List<MarkTruth> marks,
        List<EventTruth> events) {
    public RecordingTruth {
        passes = List.copyOf(passes);
        footfalls = List.copyOf(footfalls);
        marks = List.copyOf(marks);
        events = List.copyOf(events);
    }
}
