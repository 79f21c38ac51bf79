package levelback.scoring.gait;

import java.util.List;

/**
 * One reading of a measure (one stride's time, one step's length) with its derivatives by the events it was made from.
 *
 * @param value in the measure's unit
 * @param fromS when it began, for telling which round of the legs it belongs to
 * @param parts the events behind it
 */
record Reading(double value, double fromS, List<Part> parts) {

    /**
     * An event's part in a reading.
     *
     * @param event index into the walk's events
     * @param byTime derivative of the reading by the event's time
     * @param byX derivative of the reading by the event's x as given in the file
     */
    record Part(int event, double byTime, double byX) {}

    Reading {
        parts = List.copyOf(parts);
    }
}
