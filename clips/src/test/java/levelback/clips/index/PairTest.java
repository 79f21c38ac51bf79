package levelback.clips.index;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;

class PairTest {

    private static ClipIndex at(long... timesUs) {
        List<IndexedFrame> frames = new ArrayList<>();
        for (long timeUs : timesUs) {
            frames.add(new IndexedFrame(frames.size(), OptionalLong.of(timeUs), timeUs, frames.isEmpty()));
        }
        return new ClipIndex(frames);
    }

    private static ClipIndex even(int frames, long stepUs, long startUs) {
        long[] times = new long[frames];
        for (int i = 0; i < frames; i++) {
            times[i] = startUs + i * stepUs;
        }
        return at(times);
    }

    @Test
    void twoRatesStayTogetherByTime() {
        // 25 a second from 7.5 s, and 50 a second from 0, joined at their frames 10 (7.9 s) and 40 (0.8 s).
        Pair pair = new Pair(even(100, 40_000, 7_500_000), 10, even(200, 20_000, 0), 40);
        assertThat(pair.rightOf(10)).contains(40);
        assertThat(pair.rightOf(11)).contains(42);
        assertThat(pair.rightOf(0)).contains(20);
        assertThat(pair.leftOf(41)).contains(10);
        assertThat(pair.leftOf(42)).contains(11);
        assertThat(pair.rightTimeUs(7_900_000)).isEqualTo(800_000);
        assertThat(pair.leftTimeUs(800_000)).isEqualTo(7_900_000);
    }

    @Test
    void unevenTimesAreTakenAsTheyAre() {
        Pair pair = new Pair(even(10, 40_000, 0), 0, at(0, 100_000, 110_000, 400_000), 0);
        assertThat(pair.rightOf(2)).contains(0); // at 80 ms the one of 100 ms is not yet there
        assertThat(pair.rightOf(3)).contains(2); // at 120 ms
        assertThat(pair.rightOf(9)).contains(2); // at 360 ms
    }

    @Test
    void whereOneHasNoPictureThereIsNone() {
        Pair pair = new Pair(even(100, 40_000, 0), 50, even(20, 40_000, 0), 5);
        assertThat(pair.rightOf(44)).isEmpty();
        assertThat(pair.rightOf(45)).contains(0);
        assertThat(pair.rightOf(64)).contains(19);
        assertThat(pair.rightOf(65)).isEmpty();
        assertThat(pair.firstLeft()).contains(45);
        assertThat(pair.lastLeft()).contains(64);
    }

    @Test
    void joinedFramesStandTogetherEvenWhereTimesRepeat() {
        // A damaged stream whose stamps stand still.
        Pair pair = new Pair(at(0, 40_000, 40_000, 80_000), 1, at(0, 40_000, 40_000, 80_000), 1);
        assertThat(pair.rightOf(1)).contains(1);
        assertThat(pair.leftOf(1)).contains(1);
    }

    @Test
    void refusesAFrameThatIsNotThere() {
        assertThatThrownBy(() -> new Pair(at(0), 1, at(0), 0)).isInstanceOf(IllegalArgumentException.class);
        assertThat(new Pair(at(0), 0, at(5), 0).joinedAt(0, 0).rightOf(0)).contains(0);
    }
}
