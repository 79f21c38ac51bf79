package levelback.clips.open;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import levelback.clips.corpus.OracleFrame;
import levelback.clips.decode.FrameReader;
import levelback.clips.decode.Span;
import levelback.clips.open.ClipException.Reason;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Packets first, certainty later: it must come to the same as a full decode at once, whichever way it is interrupted. */
class VerifyClipTest {

    @TempDir
    Path folder;

    static Stream<Path> films() throws Exception {
        return IndexCacheTest.films();
    }

    private IndexCache cache() {
        return new IndexCache(folder.resolve("cache"));
    }

    private static void same(Clip clip, Path film) throws Exception {
        Clip whole = Clip.open(film, Long.MAX_VALUE, () -> false);
        assertThat(clip.decoded()).isTrue();
        assertThat(clip.facts()).isEqualTo(whole.facts());
        assertThat(clip.index()).isEqualTo(whole.index());
        List<OracleFrame> oracle = OracleFrame.parse(
                Files.readString(Path.of(film + ".framemd5")), Files.readString(Path.of(film + ".frames")));
        try (FrameReader reader = clip.reader(0)) {
            for (int frame = oracle.size() - 1; frame >= 0; frame -= 7) {
                assertThat(reader.md5(frame)).isEqualTo(oracle.get(frame).md5());
            }
        }
    }

    @ParameterizedTest
    @MethodSource("films")
    void comesToTheSameAsAFullDecode(Path film) throws Exception {
        Clip quick = Clip.open(film, 0, cache(), () -> false);
        int frames = quick.facts().frameCount();
        List<Span> passes = List.of(new Span(frames / 2, frames - 1), new Span(3 * frames, 3 * frames + 5));
        same(new VerifyClip(cache(), 1).verify(quick, passes, done -> {}, () -> false), film);
        same(cache().find(film, () -> false).orElseThrow(), film);
    }

    @ParameterizedTest
    @MethodSource("films")
    void stoppedAgainAndAgainItComesToTheSame(Path film) throws Exception {
        Clip quick = Clip.open(film, 0, cache(), () -> false);
        if (quick.decoded()) {
            return; // nothing was left to verify
        }
        Clip certain = quick;
        int stops = 0;
        while (!certain.decoded()) {
            // As after another start of the program: everything comes from the cache.
            Clip known = Clip.open(film, 0, cache(), () -> false);
            int before = known.order().checksKnown();
            AtomicInteger polls = new AtomicInteger();
            int most = 60 + 40 * stops++;
            try {
                certain = new VerifyClip(cache(), 2)
                        .verify(known, List.of(), done -> {}, () -> polls.incrementAndGet() > most);
            } catch (ClipException stopped) {
                assertThat(stopped.reason()).isEqualTo(Reason.CANCELLED);
                assertThat(known.order().checksKnown()).isGreaterThanOrEqualTo(before);
            }
            assertThat(stops).as("rounds").isLessThan(60);
        }
        same(certain, film);
    }

    private static Path film(String name) throws Exception {
        return Path.of(VerifyClipTest.class.getResource("/corpus/" + name).toURI());
    }

    @Test
    void goesOnWhereItWas() throws Exception {
        Path film = film("h264-b-closed.mp4");
        Clip quick = Clip.open(film, 0, cache(), () -> false);
        List<Double> told = new ArrayList<>();
        ClipException stopped = catchThrowableOfType(
                ClipException.class,
                () -> new VerifyClip(cache(), 1).verify(quick, List.of(), told::add, () -> told.size() > 40));
        assertThat(stopped.reason()).isEqualTo(Reason.CANCELLED);
        Clip known = Clip.open(film, 0, cache(), () -> false);
        assertThat(known.decoded()).isFalse();
        assertThat(known.order().checksKnown()).isGreaterThan(40);
        told.clear();
        Clip certain = new VerifyClip(cache(), 1).verify(known, List.of(), told::add, () -> false);
        // From the key before the place where it was stopped, not from the start.
        assertThat(told.get(0)).isGreaterThan(0.3);
        same(certain, film);
    }

    /** A hole of zeros in the pictures, which the packets don't show. */
    @Test
    void findsWhatThePacketsDoNotShow() throws Exception {
        Path film = folder.resolve("hole.mp4");
        byte[] bytes = Files.readAllBytes(film("h264-b-closed.mp4"));
        java.util.Arrays.fill(bytes, bytes.length / 2, bytes.length / 2 + 600, (byte) 0);
        Files.write(film, bytes);
        Clip quick = Clip.open(film, 0, cache(), () -> false);
        assertThat(quick.decoded()).isFalse();
        assertThat(quick.facts().damage()).isEmpty();
        Clip certain = new VerifyClip(cache(), 1).verify(quick, List.of(), done -> {}, () -> false);
        assertThat(certain.facts())
                .isEqualTo(Clip.open(film, Long.MAX_VALUE, () -> false).facts());
        assertThat(certain.facts().damage()).isNotEmpty();
    }
}
