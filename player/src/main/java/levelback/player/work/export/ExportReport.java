package levelback.player.work.export;

import java.nio.file.Path;
import java.util.List;

/**
 * What an export wrote.
 *
 * @param notCarried what of the book the files do not hold, a sentence each
 * @param personalData what they say about people and farms, in one sentence or two
 */
public record ExportReport(List<Path> files, List<String> notCarried, String personalData) {
    public ExportReport {
        files = List.copyOf(files);
        notCarried = List.copyOf(notCarried);
    }
}
