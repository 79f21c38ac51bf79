package levelback.player.work.export;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import levelback.scoring.scale.GaitScale;
import levelback.store.book.Book;
import levelback.store.herd.Cow;
import levelback.store.herd.CowId;
import levelback.store.herd.Herd;
import levelback.store.herd.NumberSpan;
import levelback.store.herd.Person;
import levelback.store.herd.Score;
import levelback.store.herd.Tag;
import levelback.store.herd.Visit;
import levelback.store.herd.VisitId;
import levelback.store.lane.Pass;
import levelback.store.lane.PassId;
import levelback.store.lane.Recording;
import levelback.store.trim.LiftCard;

/**
 * All of a herd as the writers of files read it.
 *
 * @param cows every cow; the number in it may be empty, see {@link ExportNames}
 * @param numbers every number that a cow carries or carried, oldest first
 * @param people everybody in the book
 * @param scores scores in force
 * @param recordings with their visits, in order
 * @param tags by pass
 */
record HerdContents(
        Herd herd,
        List<Cow> cows,
        List<NumberSpan> numbers,
        List<Person> people,
        Map<VisitId, Visit> visits,
        List<Score> scores,
        List<LiftCard> cards,
        List<Recording> recordings,
        List<Pass> passes,
        Map<PassId, List<Tag>> tags,
        Map<String, GaitScale> scales) {

    private static final LocalDate FIRST_DAY = LocalDate.of(1900, 1, 1);
    private static final LocalDate LAST_DAY = LocalDate.of(9999, 12, 31);

    HerdContents {
        cows = List.copyOf(cows);
        numbers = List.copyOf(numbers);
        people = List.copyOf(people);
        scores = List.copyOf(scores);
        cards = List.copyOf(cards);
        recordings = List.copyOf(recordings);
        passes = List.copyOf(passes);
    }

    /** Reads a herd. Blocking. */
    static HerdContents of(Book book, Herd herd) {
        Map<VisitId, Visit> visits = new LinkedHashMap<>();
        List<Recording> recordings = new ArrayList<>();
        List<Pass> passes = new ArrayList<>();
        Map<PassId, List<Tag>> tags = new LinkedHashMap<>();
        for (Visit visit : book.herd().visits(herd.id())) {
            visits.put(visit.id(), visit);
            recordings.addAll(book.lane().recordingsOf(visit.id()));
            for (Pass pass : book.lane().passesOf(visit.id())) {
                passes.add(pass);
                tags.put(pass.id(), book.herd().tagsOf(pass.id()));
            }
        }
        List<Score> scores = book.herd().scoresOf(herd.id());
        Map<String, GaitScale> scales = new LinkedHashMap<>();
        for (Score score : scores) {
            if (!scales.containsKey(score.scaleId())) {
                book.herd().scale(score.scaleId()).ifPresent(scale -> scales.put(scale.id(), scale));
            }
        }
        return new HerdContents(
                herd,
                book.herd().cows(herd.id(), LAST_DAY),
                book.herd().numbersOf(herd.id()),
                book.herd().people(),
                visits,
                scores,
                book.trim().cardsOf(herd.id(), FIRST_DAY, LAST_DAY),
                recordings,
                passes,
                tags,
                scales);
    }

    /** The day of a score. */
    LocalDate dayOf(Score score) {
        Visit visit = visits.get(score.visit());
        return visit == null ? LocalDate.ofInstant(score.at(), herd.zone()) : visit.date();
    }

    /** Whether the cow is one of the herd that stands in the export. */
    boolean has(CowId cow) {
        return cows.stream().anyMatch(c -> c.id().equals(cow));
    }
}
