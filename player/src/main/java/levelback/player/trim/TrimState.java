package levelback.player.trim;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import levelback.player.work.ChuteCow;
import levelback.player.work.ChuteRow;

/** What the Trim page can show. */
sealed interface TrimState {

    /** The book is being read for the first time. */
    record Reading() implements TrimState {}

    /**
     * Nobody is in the chute.
     *
     * @param herd whether there is a herd at all
     * @param list who is to be lifted, worst first
     */
    record Empty(boolean herd, LocalDate day, List<ChuteRow> list) implements TrimState {}

    /**
     * A cow is in the chute.
     *
     * @param question what the page asks before it goes on
     */
    record InChute(LocalDate day, List<ChuteRow> list, ChuteCow cow, Entry entry, Optional<Question> question)
            implements TrimState {

        InChute with(Entry now) {
            return new InChute(day, list, cow, now, question);
        }

        InChute ask(Optional<Question> now) {
            return new InChute(day, list, cow, entry, now);
        }

        /** Her place on the list, 1 for the first; 0 where she is not on it. */
        int place() {
            for (int i = 0; i < list.size(); i++) {
                if (list.get(i).cow().id().equals(cow.cow().id())) {
                    return i + 1;
                }
            }
            return 0;
        }

        Optional<ChuteRow> row() {
            return place() == 0 ? Optional.empty() : Optional.of(list.get(place() - 1));
        }

        /** Who comes after her: the cows on the list that are still to do, in order. */
        List<ChuteRow> next() {
            return list.stream()
                    .filter(row ->
                            !row.done() && !row.cow().id().equals(cow.cow().id()))
                    .toList();
        }
    }
}
