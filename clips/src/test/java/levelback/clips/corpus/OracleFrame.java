package levelback.clips.corpus;

import java.util.ArrayList;
import java.util.List;

/**
 * A line of a {@code framemd5} list.
 *
 * @param pts as the program prints it: counted from the start of the file
 * @param md5 of the packed picture
 */
public record OracleFrame(long pts, String md5) {

    /** Reads a list. */
    public static List<OracleFrame> parse(String list) {
        List<OracleFrame> frames = new ArrayList<>();
        for (String line : list.lines().toList()) {
            if (!line.isBlank() && !line.startsWith("#")) {
                String[] cells = line.split(",", -1);
                frames.add(new OracleFrame(Long.parseLong(cells[2].strip()), cells[5].strip()));
            }
        }
        return frames;
    }
}
