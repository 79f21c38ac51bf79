package levelback.player.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import levelback.clips.decode.FrameReader;
import levelback.clips.open.Clip;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ClipCommandTest {

    @TempDir
    Path folder;

    private Path film;
    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    @BeforeEach
    void copy() throws Exception {
        film = folder.resolve("kü:%d.mp4");
        Files.copy(
                Path.of(ClipCommandTest.class
                        .getResource("/film/h264-b-closed.mp4")
                        .toURI()),
                film);
    }

    private int run(String... args) {
        out.getBuffer().setLength(0);
        err.getBuffer().setLength(0);
        return CommandLineRoot.run(new PrintWriter(out, true), new PrintWriter(err, true), args);
    }

    private int clip(String from, String to, Path to2, String... more) {
        String[] args = Stream.concat(
                        Stream.of("clip", film.toString(), "--from", from, "--to", to, "--out", to2.toString()),
                        Stream.of(more))
                .toArray(String[]::new);
        return run(args);
    }

    @Test
    void writesTheSpanAndSaysWhichFramesItHas() throws Exception {
        Path made = folder.resolve("clip ä:%d.mp4");
        assertThat(clip("0.5", "1", made)).as(err.toString()).isZero();
        // 25 frames a second: on show at 0.5 s is frame 12 (0.48 s), the last that starts before 1 s is frame 24
        assertThat(out.toString()).startsWith("frames 12 to 24 of ").contains("0.520 s, 160 x 90, in");
        assertThat(Clip.open(made, () -> false).facts().frameCount()).isEqualTo(13);
        assertThat(clip("0.5", "1", made, "--burn", "Cow 4711", "--burn-time"))
                .as(err.toString())
                .isZero();
        assertThat(Clip.open(made, () -> false).facts().frameCount()).isEqualTo(13);
    }

    @Test
    void theStripStandsAlongTheFootOfEveryPicture() throws Exception {
        Path falls = Files.writeString(
                folder.resolve("falls.csv"), "time_s,leg,event\n0.6,LF,down\n0.9,LF,up\n0.5,RH,down\n");
        Path plain = folder.resolve("plain.mp4");
        Path striped = folder.resolve("striped.mp4");
        assertThat(clip("0.5", "1", plain)).isZero();
        assertThat(clip("0.5", "1", striped, "--strip", falls.toString()))
                .as(err.toString())
                .isZero();
        Clip without = Clip.open(plain, () -> false);
        Clip with = Clip.open(striped, () -> false);
        assertThat(with.facts().frameCount()).isEqualTo(without.facts().frameCount());
        ByteBuffer one = ByteBuffer.allocateDirect(4 * 160 * 90);
        ByteBuffer other = ByteBuffer.allocateDirect(4 * 160 * 90);
        try (FrameReader first = without.reader();
                FrameReader second = with.reader()) {
            first.readBgra(6, one, 4 * 160);
            second.readBgra(6, other, 4 * 160);
        }
        assertThat(apart(one, other, 0, 20)).as("the top is as it was").isLessThan(8);
        assertThat(apart(one, other, 40, 85)).as("the foot is drawn over").isGreaterThan(20);
        assertThat(clip("0.5", "1", plain, "--strip", folder.resolve("none.csv").toString()))
                .isEqualTo(2);
        Files.writeString(falls, "time_s,leg,event\n0.6,XX,down\n");
        assertThat(clip("0.5", "1", plain, "--strip", falls.toString())).isEqualTo(2);
        assertThat(err.toString()).contains("line 2").contains("leg");
    }

    /** Mean difference of the bytes of some lines. */
    private static double apart(ByteBuffer one, ByteBuffer other, int fromLine, int toLine) {
        long sum = 0;
        for (int i = 4 * 160 * fromLine; i < 4 * 160 * toLine; i++) {
            sum += Math.abs((one.get(i) & 0xFF) - (other.get(i) & 0xFF));
        }
        return sum / (4.0 * 160 * (toLine - fromLine));
    }

    @Test
    void whatCannotBeDoneIsOneSentenceAndNothingIsWritten() throws Exception {
        Path made = folder.resolve("none.mp4");
        for (String[] span :
                new String[][] {{"1", "0.5"}, {"1", "1"}, {"-2", "-1"}, {"NaN", "1"}, {"3", "9"}, {"0", "Infinity"}}) {
            assertThat(clip(span[0], span[1], made)).as(span[0]).isEqualTo(2);
            assertThat(out.toString()).isEmpty();
            assertThat(err.toString().lines()).as(err.toString()).hasSize(1);
        }
        assertThat(clip("0", "1", folder)).isEqualTo(2);
        assertThat(err.toString()).contains("is a folder");
        byte[] before = Files.readAllBytes(film);
        assertThat(clip("0", "1", film)).isEqualTo(2);
        assertThat(err.toString()).contains("never written to");
        assertThat(film).hasBinaryContent(before);
        assertThat(clip("0", "1", folder.resolve("no").resolve("clip.mp4"))).isEqualTo(1);
        assertThat(err.toString().lines()).hasSize(1);
        try (Stream<Path> left = Files.list(folder)) {
            assertThat(left).containsExactly(film);
        }
    }
}
