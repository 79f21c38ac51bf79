package levelback.player.score;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.OptionalLong;
import java.util.TreeSet;
import java.util.stream.IntStream;
import levelback.clips.index.IndexedFrame;
import levelback.clips.open.ClipFacts.Damage;
import org.junit.jupiter.api.Test;

class DamageLinesTest {

    /** 160 frames at 25 a second: frame n is at n × 40 ms. Every frame stands alone. */
    private static final List<IndexedFrame> TIMES = film(1);

    private static List<IndexedFrame> film(int keyEvery) {
        return IntStream.range(0, 160)
                .mapToObj(n -> new IndexedFrame(n, OptionalLong.empty(), n * 40_000L, n % keyEvery == 0))
                .toList();
    }

    /** Inter-picture coding, ISO/IEC 14496-2: between key frames a picture is made from its neighbours. */
    @Test
    void framesThatLeanOnDamagedOnesAreNotCalledExact() {
        List<Damage> one = List.of(frames(88, 91));
        assertThat(DamageLines.of(film(50), one, new TreeSet<>(), 0, 159, 0))
                .containsExactly("Frames 88 to 91 can't be read;"
                        + " frames 51 to 87, 92 to 99 may lean on what is lost, the rest is exact.");
        assertThat(DamageLines.of(film(50), one, new TreeSet<>(), 95, 120, 0))
                .containsExactly("Frames 95 to 99 may lean on pictures that are lost; the rest is exact.");
        assertThat(DamageLines.of(film(50), one, new TreeSet<>(), 100, 120, 0)).isEmpty();
    }

    private static List<String> said(int first, int last, int base, Damage... damage) {
        return DamageLines.of(TIMES, List.of(damage), new TreeSet<>(), first, last, base);
    }

    private static Damage frames(int from, int to) {
        return new Damage("", from * 40_000L, (to + 1) * 40_000L);
    }

    @Test
    void namesTheFramesThatCannotBeReadAndNoOthers() {
        assertThat(said(0, 159, 0, frames(88, 91)))
                .containsExactly("Frames 88 to 91 can't be read; the rest is exact.");
        assertThat(said(0, 159, 0, frames(88, 88))).containsExactly("Frame 88 can't be read; the rest is exact.");
        assertThat(said(0, 159, 0, frames(10, 12), frames(88, 91)))
                .containsExactly("Frames 10 to 12, 88 to 91 can't be read; the rest is exact.");
    }

    @Test
    void aPassCountsItsOwnFramesAndIsSilentOnDamageElsewhere() {
        assertThat(said(80, 119, 79, frames(88, 91)))
                .containsExactly("Frames 9 to 12 can't be read; the rest is exact.");
        assertThat(said(0, 39, -1, frames(88, 91))).isEmpty();
        assertThat(said(0, 39, -1, new Damage("", 6_400_000, 9_000_000))).isEmpty();
    }

    @Test
    void picturesThatAreNotInTheRecordingAreMissingNotUnreadable() {
        assertThat(said(0, 159, 0, new Damage("", 410_000, 430_000)))
                .containsExactly("Pictures are missing between frames 10 and 11; the rest is exact.");
        assertThat(said(0, 159, 0, new Damage("", -80_000, 0)))
                .containsExactly("Pictures are missing before frame 0; the rest is exact.");
        assertThat(said(0, 159, 0, new Damage("", 6_400_000, 9_000_000)))
                .containsExactly("The recording is cut off after frame 159; what is there is exact.");
    }

    @Test
    void errorsThatCannotBePlacedAreNotPlaced() {
        assertThat(said(0, 159, 0, new Damage("", 0, 6_400_000)))
                .containsExactly("This recording has errors that can't be placed; any of its frames may be inexact.");
    }

    @Test
    void framesThatFailWhileShownAreNamed() {
        assertThat(DamageLines.of(TIMES, List.of(), new TreeSet<>(List.of(5, 6, 9)), 0, 159, 0))
                .containsExactly("Frames 5 to 6, 9 can't be read; the rest is exact.");
    }
}
