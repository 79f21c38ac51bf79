package levelback.store.herd;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import levelback.store.lane.PassId;

/** Herds, cows, people, visits, scores and tags of a book. Blocking; see {@link levelback.store.book.Book}. */
public interface HerdShelf {

    List<Herd> herds();

    void put(Herd herd);

    List<Person> people();

    void put(Person person);

    /** All cows of a herd with the number in force on a day, by number. */
    List<Cow> cows(HerdId herd, LocalDate on);

    Optional<Cow> cow(CowId cow, LocalDate on);

    /** The cow that carried a number on a day. */
    Optional<Cow> cowByNumber(HerdId herd, String number, LocalDate on);

    /** Adds a cow or changes her; her number holds from {@code from} on, and the one before ends the day before. */
    void put(Cow cow, LocalDate from);

    /** Visits of a herd, oldest first. */
    List<Visit> visits(HerdId herd);

    /** The visit of that day, made if it is not there. */
    Visit visitOn(HerdId herd, LocalDate date);

    /**
     * Puts a score in force. The one in force for the same cow, visit, scorer and leg, if any, is superseded and stays in
     * the history.
     */
    void put(Score score);

    /** Scores in force of a visit. */
    List<Score> scoresOf(VisitId visit);

    /** Scores in force of a herd, oldest visit first. */
    List<Score> scoresOf(HerdId herd);

    /** Scores in force of a cow, oldest visit first. */
    List<Score> scoresOf(CowId cow);

    void put(Tag tag);

    /** Takes a tag off; it stays in the history. */
    void takeOff(TagId tag);

    List<Tag> tagsOf(PassId pass);
}
