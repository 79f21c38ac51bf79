package levelback.store.herd;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import levelback.scoring.scale.GaitScale;
import levelback.store.lane.PassId;

/** Herds, cows, people, visits, scores and tags of a book. Blocking; see {@link levelback.store.book.Book}. */
public interface HerdShelf {

    List<Herd> herds();

    void put(Herd herd);

    /** Adds a herd of which nobody has said on which scale it is scored; the record's scale is what the desk offers. */
    void putWithoutChosenScale(Herd herd);

    /** Whether somebody has said on which scale the herd is scored. */
    boolean scaleIsChosen(HerdId herd);

    /** Scales in the book: those in use and those of its owner's own making. */
    List<GaitScale> scales();

    /** A scale by its id: one in the book or a published one. */
    Optional<GaitScale> scale(String id);

    /** Keeps a scale of one's own with its level texts, or corrects their wording. */
    void put(GaitScale scale);

    List<Person> people();

    void put(Person person);

    /** All cows of a herd with the number in force on a day, by number. */
    List<Cow> cows(HerdId herd, LocalDate on);

    Optional<Cow> cow(CowId cow, LocalDate on);

    /**
     * The cow that carried a number on a day. Where nobody did and one came to carry it later, it is she: a number's
     * beginning is often only the day on which it was first written down.
     */
    Optional<Cow> cowByNumber(HerdId herd, String number, LocalDate on);

    /** The cow that wears a transponder. */
    Optional<Cow> cowByTag(HerdId herd, String tag, LocalDate on);

    /**
     * Adds a cow or changes her; her number holds from {@code from} on, and the one before ends the day before.
     *
     * @throws levelback.store.book.StoreException if another cow of the herd carries the number on that day
     */
    void put(Cow cow, LocalDate from);

    /** Every number that a cow of the herd carries or carried, oldest first. */
    List<NumberSpan> numbersOf(HerdId herd);

    /** Ends her number with a day, so that another cow may carry it from the next day on. */
    void endNumber(CowId cow, LocalDate lastDay);

    /** Visits of a herd, oldest first. */
    List<Visit> visits(HerdId herd);

    /** The visit of that day, made if it is not there. */
    Visit visitOn(HerdId herd, LocalDate date);

    /**
     * Puts a score in force. The one in force for the same cow, visit, scorer and leg, if any, is superseded and stays in
     * the history.
     *
     * @return the score as it stands: the same, unless its identity was used up by an earlier state of it (scores are
     *     never overwritten), and with {@code at} in whole microseconds
     */
    Score put(Score score);

    /** Scores in force of a visit. */
    List<Score> scoresOf(VisitId visit);

    /** Scores in force of a herd, oldest visit first. */
    List<Score> scoresOf(HerdId herd);

    /** Scores in force of a cow, oldest visit first. */
    List<Score> scoresOf(CowId cow);

    /** Scores of a herd that a later one superseded, oldest first. */
    List<Score> supersededScoresOf(HerdId herd);

    void put(Tag tag);

    /** Takes a tag off; it stays in the history. */
    void takeOff(TagId tag);

    List<Tag> tagsOf(PassId pass);
}
