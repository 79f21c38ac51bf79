package levelback.player.desk;

import java.util.Optional;
import java.util.stream.Stream;

/** The eight pages; each keeps its place in the race and its function key, built or not. */
public enum PageId {
    LANE(1),
    SCORE(2),
    MEASURE(3),
    DRAFT(4),
    TRIM(5),
    PROOF(6),
    AGREEMENT(7),
    REVIEW(8);

    private final int place;

    PageId(int place) {
        this.place = place;
    }

    /** Its place in the race from 1 to 8, which is the number of its function key. */
    public int place() {
        return place;
    }

    /** The page at a place, 1 to 8. */
    public static Optional<PageId> at(int place) {
        return Stream.of(values()).filter(page -> page.place == place).findFirst();
    }
}
