package levelback.clips.corpus;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import levelback.clips.open.Clip;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.condition.EnabledIf;
import org.junit.jupiter.api.io.TempDir;

/**
 * The corpus made anew with Debian's ffmpeg, and a larger one that is not committed: every frame in every order against
 * the list of that ffmpeg.
 */
@Tag("slow")
@EnabledIf(value = "debiansFfmpegIsThere", disabledReason = "no /usr/bin/ffmpeg on this machine: corpus not remade")
class LargeCorpusSlowTest {

    @TempDir
    static Path folder;

    static boolean debiansFfmpegIsThere() {
        return FfmpegProgram.ofSystem().isPresent();
    }

    @BeforeAll
    static void make() throws Exception {
        Path script = Path.of("src/test/corpus/make-corpus.sh").toAbsolutePath();
        Process process = new ProcessBuilder("sh", script.toString(), folder.toString(), "all")
                .redirectErrorStream(true)
                .start();
        String said = new String(process.getInputStream().readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
        assertThat(process.waitFor()).as(said).isZero();
    }

    private static List<Path> films() throws Exception {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> !file.toString().matches(".*\\.(framemd5|frames)"))
                    .sorted()
                    .toList();
        }
    }

    @TestFactory
    List<DynamicTest> everyFrameInAnyOrderIsTheOneOfADecodeFromTheStart() throws Exception {
        List<DynamicTest> tests = new ArrayList<>();
        for (Path film : films()) {
            tests.add(DynamicTest.dynamicTest(film.getFileName().toString(), () -> {
                List<OracleFrame> oracle = CorpusTest.oracle(film);
                assertThat(oracle).isNotEmpty();
                if (film.getFileName().toString().equals("big-zeros.mp4")) {
                    // A hole that the container does not show is found by decoding alone: opened by its packets the
                    // film counts frames that never come out, and says that it was not decoded.
                    assertThat(Clip.open(film, 0, () -> false).decoded()).isFalse();
                    FrameCheck.holdAgainst(Clip.open(film, Long.MAX_VALUE, () -> false), oracle);
                } else {
                    FrameCheck.holdAgainst(film, oracle);
                }
            }));
        }
        assertThat(tests).hasSizeGreaterThan(45);
        return tests;
    }

    /** Another release of the encoders makes other films: this says so, and then the committed ones should be remade. */
    @TestFactory
    List<DynamicTest> theCommittedCorpusIsWhatTheScriptMakes() throws Exception {
        List<DynamicTest> tests = new ArrayList<>();
        for (String name : CorpusTest.films().toList()) {
            tests.add(DynamicTest.dynamicTest(
                    name,
                    () -> assertThat(CorpusTest.oracle(folder.resolve(name)))
                            .isEqualTo(CorpusTest.oracle(CorpusTest.film(name)))));
        }
        return tests;
    }
}
