package levelback.store.exchange;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import levelback.scoring.proof.ScoreRow;
import levelback.scoring.value.Leg;

/**
 * A table of scores: {@code cow,date,score[,scorer][,leg][,scale]}.
 *
 * @param lines its scores with the lines they stand on
 * @param missing rows whose score is empty: a missing cell, not an error
 * @param notes for the reader
 */
public record ScoreTable(List<Line> lines, long missing, List<String> notes) {

    /** Its form. */
    public static final TableForm FORM =
            TableForm.of(List.of("cow", "date", "score"), List.of("scorer", "leg", "scale"));

    /**
     * A score and the line it stands on.
     *
     * @param scale id of its gait scale; empty text where the table does not say
     */
    public record Line(long line, ScoreRow row, String scale) {}

    private record Key(String cow, LocalDate date, String scorer, Optional<Leg> leg) {}

    public ScoreTable {
        lines = List.copyOf(lines);
        notes = List.copyOf(notes);
    }

    /**
     * Reads a table; the first bad row ends it.
     *
     * @throws BadTable also where two rows name the same cow, date, scorer and leg, and where no row has a score
     */
    public static ScoreTable read(TableSource source) {
        return read(source, FORM, (row, bad) -> {
            throw bad;
        });
    }

    /** Reads a table of another form; rows that cannot be taken are handed to {@code refused}. */
    public static ScoreTable read(TableSource source, TableForm form, TableReader.Refusal refused) {
        List<Line> lines = new ArrayList<>();
        Map<Key, Long> seen = new HashMap<>();
        Map<String, String> same = new HashMap<>();
        long[] missing = new long[1];
        List<String> notes = TableReader.read(
                source,
                form,
                row -> {
                    String cow = same.computeIfAbsent(row.needed("cow"), c -> c);
                    String scorer = same.computeIfAbsent(row.text("scorer"), s -> s);
                    LocalDate date = row.date("date");
                    Optional<Leg> leg = row.leg("leg");
                    OptionalDouble score = row.number("score");
                    Long before = seen.putIfAbsent(new Key(cow, date, scorer, leg), row.line());
                    if (before != null) {
                        throw new BadTable(
                                source.name(),
                                row.line(),
                                "cow " + cow + " has a score of that day" + (scorer.isEmpty() ? "" : " by " + scorer)
                                        + leg.map(l -> " for " + l).orElse("") + " on line " + before
                                        + " already; keep one of the two.");
                    }
                    if (score.isEmpty()) {
                        missing[0]++;
                    } else {
                        String scale = same.computeIfAbsent(row.text("scale"), k -> k);
                        lines.add(
                                new Line(row.line(), new ScoreRow(cow, date, score.getAsDouble(), scorer, leg), scale));
                    }
                },
                refused);
        if (lines.isEmpty()) {
            throw new BadTable(source.name(), 0, "no row has a score; fill in the column score.");
        }
        return new ScoreTable(lines, missing[0], notes);
    }

    /** The scores alone. */
    public List<ScoreRow> rows() {
        return lines.stream().map(Line::row).toList();
    }
}
