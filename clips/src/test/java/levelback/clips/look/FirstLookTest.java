package levelback.clips.look;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.concurrent.atomic.AtomicInteger;
import levelback.clips.open.Clip;
import levelback.clips.open.ClipException;
import levelback.clips.open.ClipException.Reason;
import levelback.clips.open.IndexCache;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FirstLookTest {

    private static final LookLimits TIGHT =
            new LookLimits(Duration.ofSeconds(2), Duration.ofSeconds(3), Duration.ZERO, 400L << 20, 1L << 26);

    @TempDir
    Path folder;

    private static Path film(String name) throws Exception {
        return Path.of(FirstLookTest.class.getResource("/corpus/" + name).toURI());
    }

    private static ClipException refusal(FirstLook look, Path file) {
        return catchThrowableOfType(ClipException.class, () -> look.at(file, 0, () -> false));
    }

    @ParameterizedTest
    @CsvSource({
        "crashes, it brought down the decoder",
        "ends, it brought down the decoder",
        "babbles, it brought down the decoder",
        "hangs, did not come to an end within",
        "never-ends, did not come to an end within",
        "eats, more than 400 MB of memory"
    })
    void whatAFileDoesToADecoderCostsOneSentence(String deed, String words) throws Exception {
        Path file = Files.writeString(folder.resolve(deed), "x");
        try (FirstLook look = new FirstLook(TIGHT, StandIn.class.getName())) {
            ClipException said = refusal(look, file);
            assertThat(said.reason()).isEqualTo(Reason.UNSAFE);
            assertThat(said.getMessage())
                    .contains(deed)
                    .contains(words)
                    .endsWith("convert it with another program first.")
                    .doesNotContain("\n");
            // and the next file is looked at as if nothing had been
            assertThatCode(() -> look.at(folder.resolve("good"), 0, () -> false))
                    .doesNotThrowAnyException();
        }
    }

    @Test
    void aWholeFilmIsFineAndOneProcessServesMany() throws Exception {
        try (FirstLook look = new FirstLook(LookLimits.USUAL)) {
            for (String name :
                    new String[] {"h264-b-closed.mp4", "hevc-open.ts", "mpeg4-packed.avi", "h264-mid-group.ts"}) {
                Path film = film(name);
                assertThatCode(() -> look.at(film, Long.MAX_VALUE, () -> false)).doesNotThrowAnyException();
            }
        }
    }

    @Test
    void whatItFindsOutIsNotFoundOutTwice() throws Exception {
        IndexCache indexes = new IndexCache(folder.resolve("indexes"));
        Path film = film("h264-mid-group.ts");
        assertThat(indexes.knows(film)).isFalse();
        try (FirstLook look = new FirstLook(LookLimits.USUAL, indexes)) {
            look.at(film, Long.MAX_VALUE, () -> false);
        }
        assertThat(Clip.known(film, Long.MAX_VALUE, indexes, () -> false)
                        .orElseThrow()
                        .facts())
                .isEqualTo(Clip.open(film, Long.MAX_VALUE, () -> false).facts());
    }

    @Test
    void whatIsNoFilmIsRefusedInTheWordsOfTheDesk() throws Exception {
        Path text = Files.writeString(folder.resolve("käse\n.mp4"), "no film at all, only words");
        try (FirstLook look = new FirstLook(LookLimits.USUAL)) {
            ClipException said = refusal(look, text);
            assertThat(said.reason()).isEqualTo(Reason.NOT_A_RECORDING);
            assertThat(said.getMessage())
                    .contains("käse .mp4 is not a video file")
                    .doesNotContain("\n");
            Path near = Path.of("").toAbsolutePath().relativize(text);
            assertThat(refusal(look, near).getMessage())
                    .startsWith(near.toString().replace('\n', ' '));
            assertThat(refusal(look, folder.resolve("missing")).reason()).isEqualTo(Reason.NOT_A_FILE);
        }
    }

    @Test
    void picturesBeyondTheLimitAreRefused() throws Exception {
        LookLimits small =
                new LookLimits(Duration.ofSeconds(20), Duration.ofSeconds(60), Duration.ZERO, 2L << 30, 160 * 90 - 1);
        try (FirstLook look = new FirstLook(small)) {
            assertThat(refusal(look, film("h264-b-closed.mp4")))
                    .hasMessageContaining("are 160 by 90, more than the 14,399 pixels");
        }
    }

    @Test
    void stopsWhenTold() throws Exception {
        Path file = Files.writeString(folder.resolve("hangs"), "x");
        AtomicInteger polls = new AtomicInteger();
        try (FirstLook look = new FirstLook(LookLimits.USUAL, StandIn.class.getName())) {
            ClipException stopped = catchThrowableOfType(
                    ClipException.class, () -> look.at(file, 0, () -> polls.incrementAndGet() > 3));
            assertThat(stopped.reason()).isEqualTo(Reason.CANCELLED);
        }
    }
}
