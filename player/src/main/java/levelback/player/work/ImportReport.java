package levelback.player.work;

import java.util.List;

/**
 * What came of an import.
 *
 * @param herd the herd it went to
 * @param taken rows that said something new
 * @param unchanged rows that the book held already
 * @param refused rows that were not taken
 * @param newCows numbers of cows that were not known and were made
 * @param notes for the reader
 */
public record ImportReport(
        String herd, long taken, long unchanged, List<Refused> refused, List<String> newCows, List<String> notes) {

    /**
     * A row that was not taken.
     *
     * @param source the table it stands in, as given
     * @param line the line it begins on, from 1; 0 for a whole file
     * @param why what is wrong and what to do
     */
    public record Refused(String source, long line, String why) {}

    public ImportReport {
        refused = List.copyOf(refused);
        newCows = List.copyOf(newCows);
        notes = List.copyOf(notes);
    }
}
