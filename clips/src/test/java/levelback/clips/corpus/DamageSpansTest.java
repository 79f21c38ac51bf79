package levelback.clips.corpus;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import levelback.clips.decode.FrameReader;
import levelback.clips.index.IndexedFrame;
import levelback.clips.open.Clip;
import levelback.clips.open.ClipException;
import levelback.clips.open.ClipException.Reason;
import levelback.clips.open.ClipFacts.Damage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Whole films, then the same ones with a piece cut off, zeroed, overwritten or left out: every picture that is no longer
 * what it was, and every one that is gone, lies inside a span that is named; the pictures are those that FFmpeg gives.
 */
class DamageSpansTest {

    private static final FfmpegProgram FFMPEG = FfmpegProgram.ofPreset();

    @TempDir
    Path folder;

    private static Map<Long, String> pictures(Clip clip) throws Exception {
        Map<Long, String> pictures = new TreeMap<>();
        try (FrameReader reader = clip.reader()) {
            for (IndexedFrame frame : clip.index().frames()) {
                pictures.put(frame.timeUs(), reader.md5(frame.frame()));
            }
        }
        return pictures;
    }

    private static boolean named(List<Damage> damage, long us) {
        return damage.stream().anyMatch(span -> us >= span.fromUs() && us < span.toUs());
    }

    private static byte[] damaged(byte[] film, String how) {
        int middle = film.length * 55 / 100;
        int piece = Math.min(2500, film.length / 10);
        switch (how) {
            case "cut" -> {
                return Arrays.copyOf(film, film.length * 6 / 10);
            }
            case "zeros" -> Arrays.fill(film, middle, middle + piece, (byte) 0);
            case "noise" -> {
                byte[] noise = new byte[piece];
                new Random(5).nextBytes(noise);
                System.arraycopy(noise, 0, film, middle, piece);
            }
            default -> {
                int gap = 188 * 7;
                byte[] shorter = Arrays.copyOf(film, film.length - gap);
                System.arraycopy(film, middle + gap, shorter, middle, shorter.length - middle);
                return shorter;
            }
        }
        return film;
    }

    @ParameterizedTest
    @CsvSource({
        // A transport stream does not say how long it should be, so what was cut off it is not known to be missing.
        "h264, mp4, zeros",
        "h264, mp4, gap",
        "h264, mp4, cut",
        "h264, mkv, zeros",
        "h264, mkv, noise",
        "h264, mkv, gap",
        "h264, mkv, cut",
        "h264, ts, zeros",
        "h264, ts, noise",
        "h264, ts, gap",
        "mpeg4, mp4, zeros",
        "mpeg4, mp4, noise",
        "mpeg4, mp4, cut",
        "mpeg4, mkv, zeros",
        "mpeg4, mkv, noise",
        "mpeg4, mkv, cut",
        "mpeg2video, ts, zeros",
        "mpeg2video, ts, noise",
        "mpeg2video, ts, gap",
        "mpeg2video, mkv, zeros",
        "mpeg2video, mkv, cut",
        "mjpeg, mkv, zeros",
        "mjpeg, mkv, noise",
        "mjpeg, mp4, zeros",
        "mjpeg, mp4, cut",
        "libvpx-vp9, webm, zeros",
        "libvpx-vp9, webm, cut",
        "libvpx, webm, zeros",
        "libaom-av1, mkv, zeros",
        "libaom-av1, mkv, noise",
        "libaom-av1, mp4, cut"
    })
    void whatIsNoLongerAsItWasIsNamed(String codec, String container, String how) throws Exception {
        Path whole = folder.resolve("whole." + container);
        List<String> options = new ArrayList<>(
                List.of("-c:v", codec.equals("h264") ? "libopenh264" : codec, "-g", "20", "-b:v", "300k"));
        if (container.equals("mp4")) {
            options.addAll(List.of("-movflags", "+faststart"));
        }
        if (codec.equals("libaom-av1") || codec.equals("libvpx-vp9")) {
            options.addAll(List.of("-cpu-used", "8"));
        }
        if (codec.startsWith("mpeg")) {
            options.addAll(List.of("-bf", "2"));
        }
        FFMPEG.encode(MovingPattern.yuv420p(144, 80, 80), 144, 80, "25", whole, options.toArray(String[]::new));
        Path film = Files.write(folder.resolve("damaged." + container), damaged(Files.readAllBytes(whole), how));

        Clip clip = Clip.open(film, Long.MAX_VALUE, () -> false);
        Map<Long, String> before = pictures(Clip.open(whole, Long.MAX_VALUE, () -> false));
        Map<Long, String> after = pictures(clip);
        List<Damage> damage = clip.facts().damage();
        assertThat(damage).isNotEmpty();
        List<OracleFrame> oracle = FFMPEG.frames(film);
        assertThat(clip.facts().frameCount()).isEqualTo(oracle.size());
        for (IndexedFrame frame : clip.index().frames()) {
            // Where a JPEG breaks off, FFmpeg shows whatever was in memory: other bytes in every run.
            if (!codec.equals("mjpeg") || !named(damage, frame.timeUs())) {
                assertThat(after.get(frame.timeUs()))
                        .as("what FFmpeg makes of frame %d", frame.frame())
                        .isEqualTo(oracle.get(frame.frame()).md5());
            }
        }
        List<String> unnamed = new ArrayList<>();
        before.forEach((us, md5) -> {
            if (!md5.equals(after.get(us)) && !named(damage, us)) {
                unnamed.add(us + (after.containsKey(us) ? " changed" : " missing"));
            }
        });
        assertThat(unnamed).as("%s", damage).isEmpty();
        long sound = before.keySet().stream().filter(us -> !named(damage, us)).count();
        assertThat(sound)
                .as("pictures that are not under suspicion: %s", damage)
                .isGreaterThanOrEqualTo(20);
    }

    @ParameterizedTest
    @CsvSource({"h264-b-closed.mp4", "h264-late.mkv", "h264-b-open.ts", "hevc-open.ts", "h264-b.avi", "mpeg2-wide.mpg"})
    void whatARecorderLeavesBehindTheEndIsNoDamage(String name) throws Exception {
        byte[] whole = Files.readAllBytes(CorpusTest.film(name));
        byte[] text = "written by the recorder".getBytes(java.nio.charset.StandardCharsets.US_ASCII);
        byte[] longer = Arrays.copyOf(whole, whole.length + text.length);
        System.arraycopy(text, 0, longer, whole.length, text.length);
        Clip clip = Clip.open(Files.write(folder.resolve(name), longer), Long.MAX_VALUE, () -> false);
        assertThat(clip.facts().damage()).isEmpty();
        assertThat(clip.facts().frameCount())
                .isEqualTo(CorpusTest.oracle(CorpusTest.film(name)).size());
    }

    @Test
    void aTransportStreamThatEndsInAPacketIsSaidToBeCutOff() throws Exception {
        byte[] whole = Files.readAllBytes(CorpusTest.film("h264-b-open.ts"));
        Path cut = Files.write(folder.resolve("cut.ts"), Arrays.copyOf(whole, whole.length - 188 * 40 - 77));
        assertThat(Clip.open(cut, Long.MAX_VALUE, () -> false).facts().damage())
                .anySatisfy(span -> assertThat(span.what()).contains("cut off"));
    }

    @Test
    void aFilmWithoutItsTableOfContentsIsRefusedInOneSentence() throws Exception {
        Path whole = folder.resolve("whole.mp4");
        FFMPEG.encode(MovingPattern.yuv420p(144, 80, 30), 144, 80, "25", whole, "-c:v", "mpeg4");
        byte[] bytes = Files.readAllBytes(whole);
        // Its table of contents is at its end, some 1,500 bytes long: the whole of it gone, then the end of it.
        for (int gone : new int[] {3000, 900, 100}) {
            Path film = Files.write(folder.resolve("cut.mp4"), Arrays.copyOf(bytes, bytes.length - gone));
            ClipException refused = catchThrowableOfType(ClipException.class, () -> Clip.open(film, () -> false));
            assertThat(refused.reason()).isEqualTo(Reason.BROKEN);
            assertThat(refused.getMessage()).contains("cut.mp4").endsWith("copy it from the camera again.");
        }
    }
}
