package levelback.player.shell;

import java.util.List;
import java.util.Optional;
import levelback.store.book.Book;
import levelback.store.herd.Herd;
import levelback.store.herd.HerdId;
import levelback.store.herd.Person;
import levelback.store.herd.Visit;
import levelback.store.herd.VisitId;

/**
 * What race and sill show of a book at one moment.
 *
 * @param visits of the herd on show, oldest first
 * @param cows how many cows the herd has
 * @param anyRecording whether a recording has come in at any visit of the herd
 */
record Situation(
        List<Herd> herds,
        Optional<Herd> herd,
        List<Visit> visits,
        Optional<Visit> visit,
        List<Person> people,
        Optional<String> undo,
        Optional<String> redo,
        int cows,
        boolean anyRecording) {

    static final Situation NOTHING = new Situation(
            List.of(),
            Optional.empty(),
            List.of(),
            Optional.empty(),
            List.of(),
            Optional.empty(),
            Optional.empty(),
            0,
            false);

    /** Reads it; what is wanted but not there gives way to the first herd and its newest visit. Blocks. */
    static Situation read(Book book, Optional<HerdId> wantedHerd, Optional<VisitId> wantedVisit) {
        List<Herd> herds = book.herd().herds();
        Optional<Herd> herd = herds.stream()
                .filter(one -> wantedHerd.filter(one.id()::equals).isPresent())
                .findFirst()
                .or(() -> herds.stream().findFirst());
        List<Visit> visits = herd.map(one -> book.herd().visits(one.id())).orElse(List.of());
        Optional<Visit> visit = visits.stream()
                .filter(one -> wantedVisit.filter(one.id()::equals).isPresent())
                .findFirst()
                .or(() -> visits.isEmpty() ? Optional.empty() : Optional.of(visits.get(visits.size() - 1)));
        boolean anyRecording = visits.stream()
                .anyMatch(one -> !book.lane().recordingsOf(one.id()).isEmpty());
        int cows = herd.map(one -> book.herd()
                        .cows(one.id(), visit.map(Visit::date).orElseGet(() -> java.time.LocalDate.now(one.zone())))
                        .size())
                .orElse(0);
        return new Situation(
                herds, herd, visits, visit, book.herd().people(), book.nextUndo(), book.nextRedo(), cows, anyRecording);
    }
}
