package levelback.clips.decode.internal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import levelback.clips.decode.Span;
import org.junit.jupiter.api.Test;

class ReadAheadTest {

    private final Set<Integer> decoded = new TreeSet<>();

    private List<Integer> plan(ReadAhead ahead, int room) {
        List<Integer> order = new ArrayList<>();
        for (int n = ahead.next(decoded::contains, room);
                n != ReadAhead.NOTHING;
                n = ahead.next(decoded::contains, room)) {
            decoded.add(n);
            order.add(n);
        }
        return order;
    }

    @Test
    void steppingBackReadsHalfOfTheRoomBehindFromTheNearestOn() {
        ReadAhead ahead = new ReadAhead(10_000);
        ahead.at(500);
        ahead.at(499);
        assertThat(plan(ahead, 480)).hasSize(240).startsWith(498, 497).endsWith(259);
    }

    @Test
    void steppingForwardsReadsAQuarterOfTheRoomAhead() {
        ReadAhead ahead = new ReadAhead(10_000);
        ahead.at(500);
        ahead.at(510);
        assertThat(plan(ahead, 120)).hasSize(30).startsWith(511).endsWith(540);
    }

    @Test
    void aJumpTellsNoWay() {
        ReadAhead ahead = new ReadAhead(10_000);
        ahead.at(500);
        ahead.at(2000);
        assertThat(ahead.travel()).isZero();
        assertThat(plan(ahead, 480))
                .containsExactly(
                        2001, 2002, 2003, 2004, 2005, 2006, 2007, 2008, 1999, 1998, 1997, 1996, 1995, 1994, 1993, 1992);
    }

    @Test
    void neverLeavesTheRecording() {
        ReadAhead ahead = new ReadAhead(20);
        ahead.at(3);
        ahead.at(2);
        assertThat(plan(ahead, 480)).containsExactly(1, 0);
        ahead.passes(new Span(15, 40), null);
        assertThat(plan(ahead, 480)).containsExactly(15, 16, 17, 18, 19);
    }

    @Test
    void thePassStaysAndTheNextOneIsDecodedAsFarAsThereIsRoom() {
        ReadAhead ahead = new ReadAhead(10_000);
        ahead.at(100);
        ahead.passes(new Span(100, 299), new Span(1000, 1199));
        assertThat(plan(ahead, 400)).contains(100 + 199, 1000).doesNotContain(1199);
        assertThat(ahead.keeps(250)).isTrue();
        assertThat(ahead.keeps(1000)).isTrue();
        assertThat(ahead.keeps(1199)).isFalse();
        assertThat(ahead.keeps(800)).isFalse();
        long kept = decoded.stream().filter(ahead::keeps).count();
        assertThat(kept).isLessThan(400);
    }

    @Test
    void ofAPassTooLongForTheRoomEveryFewFramesStay() {
        ReadAhead ahead = new ReadAhead(10_000);
        ahead.at(5000);
        ahead.passes(new Span(100, 1099), new Span(2000, 2100));
        // 100 frames find room; a quarter and a few near the present frame are for stepping: 59 are left.
        plan(ahead, 100);
        assertThat(decoded).contains(100, 117, 134).doesNotContain(101, 2000);
        assertThat(ahead.keeps(117)).isTrue();
        assertThat(ahead.keeps(118)).isFalse();
    }
}
