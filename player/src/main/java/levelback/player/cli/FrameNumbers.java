package levelback.player.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import levelback.player.work.BadInput;

/** Reads {@code 0,250,7,100-90}: numbers and ranges in any order, down as well as up. */
final class FrameNumbers {

    private static final Pattern PART = Pattern.compile("(\\d{1,9})(?:-(\\d{1,9}))?");
    private static final int MOST = 10_000_000;

    private FrameNumbers() {}

    /** @throws BadInput naming the part that is no frame number */
    static List<Integer> parse(String list) {
        List<Integer> numbers = new ArrayList<>();
        for (String part : list.split(",", -1)) {
            Matcher match = PART.matcher(part.strip());
            if (!match.matches()) {
                throw new BadInput("\"" + Sentences.onOneLine(part)
                        + "\" in the list of frames is neither a number nor a range; write it like 0,250,100-90.");
            }
            int from = Integer.parseInt(match.group(1));
            int to = match.group(2) == null ? from : Integer.parseInt(match.group(2));
            if (numbers.size() + Math.abs((long) to - from) >= MOST) {
                throw new BadInput("The list of frames is too long; ask for fewer than " + MOST + " at a time.");
            }
            int step = to < from ? -1 : 1;
            for (int n = from; n != to + step; n += step) {
                numbers.add(n);
            }
        }
        return numbers;
    }
}
