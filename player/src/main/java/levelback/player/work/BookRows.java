package levelback.player.work;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import levelback.scoring.foot.Lesions;
import levelback.scoring.proof.ScoreRow;
import levelback.scoring.proof.TrimRow;
import levelback.store.book.Book;
import levelback.store.herd.Herd;
import levelback.store.herd.Person;
import levelback.store.herd.PersonId;
import levelback.store.herd.Score;
import levelback.store.herd.Visit;
import levelback.store.herd.VisitId;
import levelback.store.trim.Finding;
import levelback.store.trim.FootCard;
import levelback.store.trim.LiftCard;

/**
 * A herd's scores in force and its cards as the rows that the arithmetic reads. The cow of a row is her identity as text,
 * so that a cow who changed her number stays one cow; the scorer is the person's name.
 *
 * @param scores oldest visit first
 * @param trims by day; a foot that was handled and not examined (a block taken off) gives no row
 */
public record BookRows(List<ScoreRow> scores, List<TrimRow> trims) {

    private static final LocalDate FIRST_DAY = LocalDate.of(1900, 1, 1);
    private static final LocalDate LAST_DAY = LocalDate.of(9999, 12, 31);

    public BookRows {
        scores = List.copyOf(scores);
        trims = List.copyOf(trims);
    }

    /** Reads all of a herd. Blocking. */
    public static BookRows of(Book book, Herd herd) {
        Map<VisitId, LocalDate> dates = new HashMap<>();
        for (Visit visit : book.herd().visits(herd.id())) {
            dates.put(visit.id(), visit.date());
        }
        Map<PersonId, String> names = new HashMap<>();
        for (Person person : book.herd().people()) {
            names.put(person.id(), person.name());
        }
        List<ScoreRow> scores = new ArrayList<>();
        for (Score score : book.herd().scoresOf(herd.id())) {
            Optional.ofNullable(dates.get(score.visit()))
                    .ifPresent(date -> scores.add(new ScoreRow(
                            score.cow().uuid().toString(),
                            date,
                            score.level(),
                            names.getOrDefault(score.scorer(), ""),
                            score.leg())));
        }
        List<TrimRow> trims = new ArrayList<>();
        for (LiftCard card : book.trim().cardsOf(herd.id(), FIRST_DAY, LAST_DAY)) {
            trims.addAll(rows(card));
        }
        return new BookRows(scores, trims);
    }

    /** The rows of one card. */
    static List<TrimRow> rows(LiftCard card) {
        String cow = card.lift().cow().uuid().toString();
        LocalDate date = card.lift().date();
        List<TrimRow> rows = new ArrayList<>();
        if (card.lift().refused()) {
            rows.add(new TrimRow(
                    cow,
                    date,
                    Optional.empty(),
                    Lesions.REFUSED,
                    "",
                    card.lift().chance()));
            return rows;
        }
        for (FootCard foot : card.feet()) {
            for (Finding finding : foot.findings()) {
                rows.add(new TrimRow(
                        cow,
                        date,
                        Optional.of(foot.foot().leg()),
                        finding.lesion(),
                        finding.stage(),
                        card.lift().chance()));
            }
            if (foot.findings().isEmpty() && foot.foot().noLesion()) {
                rows.add(new TrimRow(
                        cow,
                        date,
                        Optional.of(foot.foot().leg()),
                        Lesions.NONE,
                        "",
                        card.lift().chance()));
            }
        }
        return rows;
    }

    /** The same with one scorer's scores only. */
    public BookRows byScorer(String scorer) {
        return new BookRows(
                scores.stream().filter(row -> row.scorer().equals(scorer)).toList(), trims);
    }

    /** The same with scores up to a day only. */
    public BookRows upTo(LocalDate day) {
        return new BookRows(
                scores.stream().filter(row -> !row.date().isAfter(day)).toList(), trims);
    }
}
