package levelback.clips.corpus;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;

/**
 * A frame as FFmpeg's own programs see it in a decode from the start.
 *
 * @param pts time stamp on the stream's clock as {@code ffprobe} prints it, or where it has none its best guess
 * @param key the decoder's key-frame flag
 * @param md5 of the packed picture, as {@code framemd5} prints it
 */
public record OracleFrame(OptionalLong pts, boolean key, String md5) {

    private static final int PROBED_CELLS = 3;

    /**
     * Reads the two lists of a film.
     *
     * @param framemd5 what {@code -f framemd5} wrote
     * @param probed {@code ffprobe}'s lines of {@code key_frame,pts,best_effort_timestamp}
     */
    public static List<OracleFrame> parse(String framemd5, String probed) {
        List<String> md5 = framemd5.lines()
                .filter(line -> !line.isBlank() && !line.startsWith("#"))
                .map(line -> line.split(",", -1)[5].strip())
                .toList();
        List<String[]> facts = probed.lines()
                .map(line -> line.split(",", -1))
                .filter(cells -> cells.length >= PROBED_CELLS)
                .toList();
        if (md5.size() != facts.size()) {
            throw new IllegalStateException(
                    "the two programs disagree: " + md5.size() + " frames hashed, " + facts.size() + " probed");
        }
        List<OracleFrame> frames = new ArrayList<>();
        for (int i = 0; i < md5.size(); i++) {
            String[] cells = facts.get(i);
            OptionalLong pts = number(cells[1]);
            frames.add(new OracleFrame(pts.isPresent() ? pts : number(cells[2]), cells[0].equals("1"), md5.get(i)));
        }
        return frames;
    }

    private static OptionalLong number(String cell) {
        return cell.strip().matches("-?\\d+") ? OptionalLong.of(Long.parseLong(cell.strip())) : OptionalLong.empty();
    }
}
