package levelback.store.exchange;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import levelback.scoring.agreement.Ratings;

/**
 * A table of what scorers gave to clips: {@code scorer,clip,score[,cow][,session]}.
 *
 * @param ratings its scores
 * @param missing rows whose score is empty: a missing cell, not an error
 * @param notes for the reader
 */
public record RatingTable(Ratings ratings, long missing, List<String> notes) {

    /** Its form. */
    public static final TableForm FORM = TableForm.of(List.of("scorer", "clip", "score"), List.of("cow", "session"));

    private static final int MOST_SESSIONS = 1000;

    private record Cell(int scorer, int clip, int session) {}

    private record Named(String cow, long line) {}

    public RatingTable {
        notes = List.copyOf(notes);
    }

    /**
     * Reads a table; the first bad row ends it.
     *
     * @param scale the levels of the scale; none to take the scores that occur
     * @throws BadTable also where two rows give the same scorer, clip and session, where a clip shows two cows, where a
     *     score is no level of the scale, and where no row has a score
     */
    public static RatingTable read(TableSource source, double... scale) {
        Ratings.Builder builder = new Ratings.Builder();
        Map<Cell, Long> seen = new HashMap<>();
        Map<String, Integer> numbers = new HashMap<>();
        Map<String, Named> cows = new HashMap<>();
        double[] levels = Arrays.stream(scale).map(l -> l + 0.0).sorted().toArray();
        long[] counts = new long[2];
        List<String> notes = TableReader.read(source, FORM, row -> {
            String scorer = row.needed("scorer");
            String clip = row.needed("clip");
            String cow = row.text("cow");
            int session = row.whole("session", 1, MOST_SESSIONS).orElse(1);
            OptionalDouble score = row.number("score");
            Long before = seen.putIfAbsent(
                    new Cell(
                            numbers.computeIfAbsent(scorer, s -> numbers.size()),
                            numbers.computeIfAbsent("\n" + clip, c -> numbers.size()),
                            session),
                    row.line());
            if (before != null) {
                throw new BadTable(
                        source.name(),
                        row.line(),
                        scorer + " has scored clip " + clip + " in session " + session + " on line " + before
                                + " already; keep one of the two.");
            }
            if (!cow.isEmpty()) {
                Named named = cows.putIfAbsent(clip, new Named(cow, row.line()));
                if (named != null && !named.cow().equals(cow)) {
                    throw row.wrong(
                            "cow",
                            "gives clip " + clip + " the cow " + cow + ", but line " + named.line() + " gives it "
                                    + named.cow() + "; a clip shows one cow.");
                }
            }
            if (score.isPresent() && levels.length > 0 && Arrays.binarySearch(levels, score.getAsDouble()) < 0) {
                throw row.wrong("score", "is no level of the scale given; mend it or give the whole scale.");
            }
            counts[score.isPresent() ? 0 : 1]++;
            builder.add(scorer, clip, score.orElse(Double.NaN), cow, session);
        });
        if (counts[0] == 0) {
            throw new BadTable(source.name(), 0, "no row has a score; fill in the column score.");
        }
        return new RatingTable(scale.length == 0 ? builder.build() : builder.build(scale), counts[1], notes);
    }
}
