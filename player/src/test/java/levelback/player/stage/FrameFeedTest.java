package levelback.player.stage;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.function.Predicate;
import levelback.clips.open.ClipException;
import levelback.player.stage.FrameFeed.Shown;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(30)
class FrameFeedTest {

    private static final long FRAME_US = 20_000;

    @Test
    void givesTheVeryFrameThatWasAskedForInAnyOrder() throws Exception {
        CountedFilm film = new CountedFilm(300, FRAME_US, Set.of());
        Random random = new Random(20260414);
        try (FrameFeed feed = new FrameFeed(film, "test")) {
            int frame = 0;
            for (int i = 0; i < 400; i++) {
                frame = switch (random.nextInt(4)) {
                    case 0 -> Math.max(0, frame - 1);
                    case 1 -> Math.min(299, frame + 1);
                    case 2 -> Math.max(0, frame - 10);
                    default -> random.nextInt(300);
                };
                feed.show(frame);
                int expected = frame;
                Shown shown = until(feed, s -> s.frame() == expected);
                assertThat(pixelOf(shown)).isEqualTo(expected);
            }
        }
    }

    @Test
    void oneThreadAloneOpensReadsAndCloses() throws Exception {
        CountedFilm film = new CountedFilm(50, FRAME_US, Set.of());
        FrameFeed feed = new FrameFeed(film, "test");
        for (int frame : new int[] {3, 40, 2, 49}) {
            feed.show(frame);
            pixelOf(until(feed, s -> s.frame() == frame));
        }
        feed.close();
        feed.awaitClosed();
        assertThat(film.threads).hasSize(1).doesNotContain(Thread.currentThread());
        assertThat(film.opened).hasValue(1);
        assertThat(film.closed).hasValue(1);
    }

    @Test
    void theNewestWishWinsAndTheOthersAreNotEvenRead() throws Exception {
        CountedFilm film = new CountedFilm(1000, FRAME_US, Set.of());
        film.readNanos = 20_000_000;
        try (FrameFeed feed = new FrameFeed(film, "test")) {
            for (int frame = 100; frame < 600; frame++) {
                feed.show(frame);
            }
            feed.show(700);
            pixelOf(until(feed, s -> s.frame() == 700));
            assertThat(film.readOrder).hasSizeLessThan(20).last().isEqualTo(700);
        }
    }

    @Test
    void askingNeverWaitsForTheFilm() {
        CountedFilm film = new CountedFilm(1000, FRAME_US, Set.of());
        film.readNanos = 300_000_000;
        try (FrameFeed feed = new FrameFeed(film, "test")) {
            long before = System.nanoTime();
            for (int i = 0; i < 100; i++) {
                feed.show(i * 7);
                feed.poll(System.nanoTime());
            }
            // Waiting for the film would take a hundred times 300 ms; the limit leaves room for a busy machine.
            assertThat(System.nanoTime() - before).isLessThan(15_000_000_000L);
        }
    }

    @Test
    void aStepBackIsReadFromWhatWasDecodedOnTheWay() throws Exception {
        CountedFilm film = new CountedFilm(300, FRAME_US, Set.of());
        try (FrameFeed feed = new FrameFeed(film, "test")) {
            feed.show(200);
            pixelOf(until(feed, s -> s.frame() == 200));
            feed.show(199);
            pixelOf(until(feed, s -> s.frame() == 199));
            int read = film.readOrder.size();
            for (int frame = 198; frame > 185; frame--) {
                feed.show(frame);
                int expected = frame;
                assertThat(pixelOf(until(feed, s -> s.frame() == expected))).isEqualTo(frame);
            }
            assertThat(film.readOrder).hasSize(read);
        }
    }

    @Test
    void walksInOrderByTheStreamsOwnTimes() throws Exception {
        CountedFilm film = new CountedFilm(40, FRAME_US, Set.of());
        try (FrameFeed feed = new FrameFeed(film, "test")) {
            long start = System.nanoTime();
            List<Integer> frames = walk(feed, 10, new Walk(1, 10, 34, false));
            double seconds = (System.nanoTime() - start) / 1e9;
            assertThat(frames).isSorted().startsWith(10).endsWith(34);
            // 25 frames of 20 ms; a busy machine may be late but never early.
            assertThat(seconds).isGreaterThan(0.49);
            assertThat(frames.size() + feed.dropped()).isEqualTo(25);
        }
    }

    @Test
    void walksBackwardsAndSlowly() throws Exception {
        CountedFilm film = new CountedFilm(40, FRAME_US, Set.of());
        try (FrameFeed feed = new FrameFeed(film, "test")) {
            long start = System.nanoTime();
            List<Integer> frames = walk(feed, 12, new Walk(-0.5, 0, 39, false));
            double seconds = (System.nanoTime() - start) / 1e9;
            assertThat(frames).startsWith(12).endsWith(0).isSortedAccordingTo((a, b) -> b - a);
            assertThat(seconds).isGreaterThan(0.51);
        }
    }

    @Test
    void aFilmTooSlowToDecodeDropsPicturesAndKeepsThePace() throws Exception {
        CountedFilm film = new CountedFilm(60, FRAME_US, Set.of());
        film.readNanos = 50_000_000;
        try (FrameFeed feed = new FrameFeed(film, "test")) {
            long start = System.nanoTime();
            List<Integer> frames = walk(feed, 0, new Walk(1, 0, 59, false));
            double seconds = (System.nanoTime() - start) / 1e9;
            assertThat(frames).isSorted().endsWith(59);
            assertThat(feed.dropped()).isGreaterThan(10);
            assertThat(frames.size() + feed.dropped()).isEqualTo(60);
            assertThat(seconds).isLessThan(60 * 0.05);
        }
    }

    @Test
    void loopsBetweenTwoFramesUntilToldOtherwise() throws Exception {
        CountedFilm film = new CountedFilm(60, 5_000, Set.of());
        try (FrameFeed feed = new FrameFeed(film, "test")) {
            feed.walk(20, new Walk(1, 20, 24, true));
            int laps = 0;
            int before = -1;
            while (laps < 5) {
                Shown shown = until(feed, s -> true);
                assertThat(pixelOf(shown)).isBetween(20, 24);
                laps += shown.frame() < before ? 1 : 0;
                before = shown.frame();
            }
            // The lap is cached: five laps cost five frames.
            assertThat(film.readOrder).hasSize(5);
            feed.show(50);
            assertThat(pixelOf(until(feed, s -> s.frame() == 50))).isEqualTo(50);
            assertThat(feed.poll(System.nanoTime() + 1_000_000_000L)).isEmpty();
        }
    }

    @Test
    void aBrokenFrameIsSaidAndTheNextIsExact() throws Exception {
        CountedFilm film = new CountedFilm(60, FRAME_US, Set.of(30));
        try (FrameFeed feed = new FrameFeed(film, "test")) {
            feed.show(30);
            Shown broken = until(feed, s -> s.frame() == 30);
            assertThat(broken).isInstanceOf(Shown.Unreadable.class);
            assertThat(((Shown.Unreadable) broken).sentence()).isEqualTo("Frame 30 can't be read.");
            feed.show(31);
            assertThat(pixelOf(until(feed, s -> s.frame() == 31))).isEqualTo(31);
            feed.show(29);
            assertThat(pixelOf(until(feed, s -> s.frame() == 29))).isEqualTo(29);
        }
    }

    @Test
    void aFilmThatCannotBeOpenedIsSaidForEveryWish() throws Exception {
        CountedFilm film = new CountedFilm(60, FRAME_US, Set.of());
        film.refuses.set(new ClipException(ClipException.Reason.NOT_A_FILE, "walk.mp4 is no longer there."));
        try (FrameFeed feed = new FrameFeed(film, "test")) {
            for (int frame : new int[] {5, 9}) {
                feed.show(frame);
                assertThat(until(feed, s -> s.frame() == frame))
                        .isEqualTo(new Shown.Unreadable(frame, "walk.mp4 is no longer there."));
            }
        }
    }

    @Test
    void buffersAreUsedAgain() throws Exception {
        CountedFilm film = new CountedFilm(2000, FRAME_US, Set.of());
        try (FrameFeed feed = new FrameFeed(film, "test")) {
            for (int frame = 0; frame < 2000; frame += 3) {
                feed.show(frame);
                int expected = frame;
                pixelOf(until(feed, s -> s.frame() == expected));
            }
            assertThat(film.readOrder.size()).isGreaterThan(600);
            assertThat(feed.buffersMade()).isLessThan(130);
        }
    }

    private static List<Integer> walk(FrameFeed feed, int from, Walk walk) throws InterruptedException {
        feed.walk(from, walk);
        List<Integer> frames = new ArrayList<>();
        while (true) {
            Shown shown = until(feed, s -> true);
            if (shown instanceof Shown.Ended) {
                return frames;
            }
            assertThat(pixelOf(shown)).isEqualTo(shown.frame());
            frames.add(shown.frame());
        }
    }

    /** Polls as the screen does; lets go of what comes before. */
    private static Shown until(FrameFeed feed, Predicate<Shown> wanted) throws InterruptedException {
        while (true) {
            Optional<Shown> shown = feed.poll(System.nanoTime());
            if (shown.isPresent()) {
                if (wanted.test(shown.get())) {
                    return shown.get();
                }
                if (shown.get() instanceof Shown.Ready ready) {
                    ready.picture().release();
                }
            } else {
                Thread.sleep(1);
            }
        }
    }

    /** The number in the pixels; all pixels must agree. */
    private static int pixelOf(Shown shown) {
        assertThat(shown).isInstanceOf(Shown.Ready.class);
        Picture picture = ((Shown.Ready) shown).picture();
        ByteBuffer bgra = picture.bgra();
        int first = bgra.getInt(0);
        assertThat(bgra.getInt(bgra.capacity() - 4)).isEqualTo(first);
        picture.release();
        return first;
    }
}
