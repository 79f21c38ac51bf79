package levelback.player.work;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import levelback.scoring.herd.HerdFigures;
import levelback.scoring.herd.HerdQuestion;
import levelback.scoring.herd.VisitPrevalence;
import levelback.scoring.proof.ScoreRow;
import levelback.scoring.proof.TrimRow;
import levelback.store.book.Book;
import levelback.store.exchange.ScoreTable;
import levelback.store.exchange.TableSource;
import levelback.store.exchange.TrimTable;
import levelback.store.herd.Herd;
import levelback.store.herd.NumberSpan;

/** The step behind the command {@code herd}: how lame is the herd, and what becomes of its lame cows? Blocking. */
public final class FollowHerd {

    /**
     * An answer.
     *
     * @param figures the herd over its visits
     * @param numbers what to call a cow of the figures; a cow that is not in it is called as she stands
     * @param notes what a reader should know of the data
     */
    public record Answer(HerdFigures figures, Map<String, String> numbers, List<String> notes) {
        public Answer {
            numbers = Map.copyOf(numbers);
            notes = List.copyOf(notes);
        }

        /** What a person calls a cow of the figures. */
        public String number(String cow) {
            return numbers.getOrDefault(cow, cow);
        }
    }

    private FollowHerd() {}

    /**
     * Answers from tables.
     *
     * @param today scores dated later are noted
     * @throws levelback.store.exchange.BadTable with one sentence where a table cannot be used
     * @throws BadInput where the herd is given smaller than the cows scored on a day
     */
    public static Answer fromTables(
            TableSource scores, Optional<TableSource> trims, HerdQuestion question, LocalDate today) {
        ScoreTable table = ScoreTable.read(scores);
        List<String> notes = new ArrayList<>(table.notes());
        if (table.missing() > 0) {
            notes.add(scores.name() + ": " + table.missing() + (table.missing() == 1 ? " row has" : " rows have")
                    + " no score and counts as not scored.");
        }
        Optional<List<TrimRow>> lifts = trims.map(source -> {
            TrimTable read = TrimTable.read(source);
            notes.addAll(read.notes());
            return read.rows();
        });
        return answer(table.rows(), lifts, question, Map.of(), notes, scores.name(), today);
    }

    /**
     * Answers from a herd's scores in force and its cards. Cows are told apart by identity and called by the number that
     * each carries now.
     *
     * @throws BadInput where the herd has no score yet, or is given smaller than the cows scored on a day
     */
    public static Answer fromBook(Book book, Herd herd, HerdQuestion question, LocalDate today) {
        BookRows rows = BookRows.of(book, herd);
        if (rows.scores().isEmpty()) {
            throw new BadInput("Herd " + herd.name() + " has no score yet; score a visit, or import scores.");
        }
        Map<String, String> numbers = new HashMap<>();
        for (NumberSpan span : book.herd().numbersOf(herd.id())) {
            numbers.put(span.cow().uuid().toString(), span.number());
        }
        return answer(
                rows.scores(),
                Optional.of(rows.trims()),
                question,
                numbers,
                new ArrayList<>(),
                "herd " + herd.name(),
                today);
    }

    private static Answer answer(
            List<ScoreRow> scores,
            Optional<List<TrimRow>> trims,
            HerdQuestion question,
            Map<String, String> numbers,
            List<String> notes,
            String where,
            LocalDate today) {
        refuseTooSmallAHerd(scores, question, where);
        long later = scores.stream().filter(row -> row.date().isAfter(today)).count();
        if (later > 0) {
            notes.add(where + ": " + later + (later == 1 ? " score is" : " scores are")
                    + " dated after today; see whether the dates are right.");
        }
        return new Answer(HerdFigures.of(scores, trims, question), numbers, notes);
    }

    private static void refuseTooSmallAHerd(List<ScoreRow> scores, HerdQuestion question, String where) {
        OptionalLong size = question.herdSize();
        if (size.isEmpty()) {
            return;
        }
        for (VisitPrevalence visit :
                VisitPrevalence.of(scores, question.lameCut(), question.severeCut(), question.level())) {
            if (visit.scored() > size.getAsLong()) {
                throw new BadInput(where + ": " + visit.scored() + " cows were scored on " + visit.date()
                        + ", more than the herd of " + size.getAsLong() + "; give --herd-size the whole herd.");
            }
        }
    }
}
