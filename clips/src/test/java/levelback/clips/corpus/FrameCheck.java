package levelback.clips.corpus;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalLong;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;
import levelback.clips.decode.FrameReader;
import levelback.clips.index.IndexedFrame;
import levelback.clips.open.Clip;
import org.assertj.core.api.SoftAssertions;

/** Holds every frame of a film against a {@code framemd5} list. */
final class FrameCheck {

    private FrameCheck() {}

    static Clip holdAgainst(Path file, List<OracleFrame> oracle) throws Exception {
        // By the packets' order where it is safe, so that no check sum of a decode hides a wrong seek; then as decoded.
        holdAgainst(Clip.open(file, 0, () -> false), oracle);
        return holdAgainst(Clip.open(file, Long.MAX_VALUE, () -> false), oracle);
    }

    /** Formats without time stamps of their own: what FFmpeg prints for them it has counted itself. */
    private static final Set<String> WITHOUT_STAMPS =
            Set.of("h264", "hevc", "mpegvideo", "m4v", "mjpeg", "mpjpeg", "obu");

    private static void stamps(Clip clip, List<OracleFrame> oracle, SoftAssertions wrong) {
        boolean without = WITHOUT_STAMPS.contains(clip.facts().container());
        for (IndexedFrame frame : clip.index().frames()) {
            OracleFrame expected = oracle.get(frame.frame());
            wrong.assertThat(frame.pts())
                    .as("pts of %d", frame.frame())
                    .isEqualTo(without ? OptionalLong.empty() : expected.pts());
            wrong.assertThat(frame.keyFrame())
                    .as("key flag of %d", frame.frame())
                    .isEqualTo(expected.key());
        }
    }

    /** Shuffled with fresh eyes, forwards, then backwards. */
    static Clip holdAgainst(Clip clip, List<OracleFrame> oracle) throws Exception {
        assertThat(clip.facts().frameCount()).as("frame count").isEqualTo(oracle.size());
        List<Integer> shuffled =
                new ArrayList<>(IntStream.range(0, oracle.size()).boxed().toList());
        Collections.shuffle(shuffled, new Random(7));
        SoftAssertions wrong = new SoftAssertions();
        stamps(clip, oracle, wrong);
        // Two readers: one that has decoded nothing near before each frame of its few, one that goes through all.
        for (int i = 0; i < Math.min(5, shuffled.size()); i++) {
            try (FrameReader reader = clip.reader()) {
                int frame = shuffled.get(i);
                wrong.assertThat(reader.md5(frame))
                        .as("first frame asked is %d", frame)
                        .isEqualTo(oracle.get(frame).md5());
            }
        }
        try (FrameReader reader = clip.reader(0)) {
            for (int frame : shuffled) {
                wrong.assertThat(reader.md5(frame))
                        .as("shuffled %d", frame)
                        .isEqualTo(oracle.get(frame).md5());
            }
        }
        try (FrameReader reader = clip.reader()) {
            for (int frame = 0; frame < oracle.size(); frame++) {
                wrong.assertThat(reader.md5(frame))
                        .as("forwards %d", frame)
                        .isEqualTo(oracle.get(frame).md5());
            }
            for (int frame = oracle.size() - 1; frame >= 0; frame--) {
                wrong.assertThat(reader.md5(frame))
                        .as("backwards %d", frame)
                        .isEqualTo(oracle.get(frame).md5());
            }
        }
        wrong.assertAll();
        return clip;
    }
}
