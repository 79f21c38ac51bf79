package levelback.clips.write;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import levelback.clips.corpus.FfmpegProgram;
import levelback.clips.decode.FrameReader;
import levelback.clips.open.Clip;
import levelback.clips.open.ClipException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class StillTest {

    private static final FfmpegProgram FFMPEG = FfmpegProgram.ofPreset();

    @TempDir
    Path folder;

    private static Path film(String name) throws Exception {
        return Path.of(StillTest.class.getResource("/corpus/" + name).toURI());
    }

    /** The same frame as ffmpeg's program turns and converts it, bgr0. */
    private static byte[] oracle(Path film, int frame, String filter) {
        return FFMPEG.run(
                List.of(
                        "-v",
                        "error",
                        "-i",
                        "file:" + film,
                        "-vf",
                        "select=eq(n\\," + frame + ")" + filter,
                        "-frames:v",
                        "1",
                        "-f",
                        "rawvideo",
                        "-pix_fmt",
                        "bgra",
                        "-"),
                new byte[0],
                true);
    }

    private static double meanDifference(ByteBuffer ours, byte[] theirs) {
        assertThat(ours.capacity()).isEqualTo(theirs.length);
        long sum = 0;
        for (int i = 0; i < theirs.length; i++) {
            sum += Math.abs((ours.get(i) & 0xFF) - (theirs[i] & 0xFF));
        }
        return (double) sum / theirs.length;
    }

    @ParameterizedTest
    @ValueSource(strings = {"h264-turned.mp4", "h264-turned-back.mp4", "h264-turned-over.mp4", "h264-b-closed.mp4"})
    void isUprightAsFfmpegsOwnAutorotation(String name) throws Exception {
        Clip clip = Clip.open(film(name), () -> false);
        try (FrameReader reader = clip.reader()) {
            ByteBuffer ours = Still.upright(clip, reader, 12);
            // A picture turned any other way differs by more than 40 on average.
            assertThat(meanDifference(ours, oracle(film(name), 12, ""))).isLessThan(2);
        }
    }

    @Test
    void hasSquarePixels() throws Exception {
        Clip clip = Clip.open(film("h264-wide-pixels.mp4"), () -> false);
        try (FrameReader reader = clip.reader()) {
            ByteBuffer ours = Still.upright(clip, reader, 30);
            assertThat(ours.capacity()).isEqualTo(4 * 213 * 90);
            byte[] theirs = oracle(film("h264-wide-pixels.mp4"), 30, ",format=bgra,scale=213:90:flags=bilinear");
            assertThat(meanDifference(ours, theirs)).isLessThan(3);
        }
    }

    /**
     * Flat patches coded with a known matrix and range must come back as the colour they were made from. The samples are
     * worked out by the formulas of ITU-R BT.601-7 (2.5) and BT.709-6 (3.2 to 3.5), 8 bits; full range as JFIF 1.02.
     */
    @ParameterizedTest
    @CsvSource({
        "601, limited, 320, 240, bt470bg, tv",
        "709, limited, 320, 240, bt709, tv",
        "709, full, 320, 240, bt709, pc",
        "601, full, 320, 240, bt470bg, pc",
        "601, limited, 320, 240, unknown, unknown",
        "709, limited, 1280, 720, unknown, unknown",
    })
    void hasTheColoursOfTheStream(String matrix, String range, int width, int height, String space, String rangeTag)
            throws Exception {
        int[][] patches = {{200, 60, 40}, {30, 160, 60}, {40, 70, 190}, {128, 128, 128}, {235, 220, 40}};
        for (int[] rgb : patches) {
            byte[] picture = patch(rgb, matrix.equals("709"), range.equals("full"), width, height);
            // FFV1 in Matroska: lossless, and the tags are the container's.
            Path film = folder.resolve("patch.mkv");
            FFMPEG.encode(
                    picture,
                    width,
                    height,
                    "25",
                    film,
                    "-vf",
                    "setparams=colorspace=" + space + ":range=" + rangeTag,
                    "-c:v",
                    "ffv1");
            Clip clip = Clip.open(film, () -> false);
            try (FrameReader reader = clip.reader()) {
                ByteBuffer bgra = ByteBuffer.allocateDirect(4 * width * height);
                reader.readBgra(0, bgra, 4 * width);
                int middle = 4 * (height / 2 * width + width / 2);
                int[] got = {bgra.get(middle + 2) & 0xFF, bgra.get(middle + 1) & 0xFF, bgra.get(middle) & 0xFF};
                for (int c = 0; c < 3; c++) {
                    assertThat(got[c])
                            .as("%s %s %s: %s", matrix, range, Arrays.toString(rgb), Arrays.toString(got))
                            .isBetween(rgb[c] - 3, rgb[c] + 3);
                }
                assertThat(bgra.get(middle + 3)).as("alpha").isEqualTo((byte) 0xFF);
            }
        }
    }

    private static byte[] patch(int[] rgb, boolean hd, boolean full, int width, int height) {
        double kr = hd ? 0.2126 : 0.299;
        double kb = hd ? 0.0722 : 0.114;
        double y = kr * rgb[0] + (1 - kr - kb) * rgb[1] + kb * rgb[2];
        double cb = (rgb[2] - y) / (2 * (1 - kb));
        double cr = (rgb[0] - y) / (2 * (1 - kr));
        byte[] picture = new byte[width * height * 3 / 2];
        byte luma = (byte) Math.round(full ? y : 16 + y * 219 / 255);
        Arrays.fill(picture, 0, width * height, luma);
        int quarter = width * height / 4;
        Arrays.fill(picture, width * height, width * height + quarter, (byte)
                Math.round(128 + cb * (full ? 1 : 224.0 / 255)));
        Arrays.fill(picture, width * height + quarter, picture.length, (byte)
                Math.round(128 + cr * (full ? 1 : 224.0 / 255)));
        return picture;
    }

    @Test
    void takesTheFrameOnShowAtATime() throws Exception {
        Clip late = Clip.open(film("h264-late.mkv"), () -> false);
        assertThat(Still.frameAt(late, 0)).isZero();
        assertThat(Still.frameAt(late, -5)).isZero();
        assertThat(Still.frameAt(late, 0.0399)).isZero();
        assertThat(Still.frameAt(late, 0.04)).isEqualTo(1);
        assertThat(Still.frameAt(late, 2.99)).isEqualTo(74);
        assertThatThrownBy(() -> Still.frameAt(late, 3.01))
                .isInstanceOf(ClipException.class)
                .hasMessageContaining("ends at 3.000 s");
    }

    @Test
    void thePngIsReadByFfmpegPixelForPixel() throws Exception {
        Clip clip = Clip.open(film("h264-turned.mp4"), () -> false);
        Path png = folder.resolve("kü:%d.png");
        Still.write(clip, 40, png);
        byte[] read = FFMPEG.run(
                List.of(
                        "-v",
                        "error",
                        "-f",
                        "png_pipe",
                        "-i",
                        "file:" + png,
                        "-f",
                        "rawvideo",
                        "-pix_fmt",
                        "bgra",
                        "-"),
                new byte[0],
                true);
        try (FrameReader reader = clip.reader()) {
            assertThat(meanDifference(Still.upright(clip, reader, 40), read)).isZero();
        }
        try (var files = Files.list(folder)) {
            assertThat(files).as("nothing half-written stays").hasSize(1);
        }
    }

    @Test
    void saysWhereItCannotWrite() throws Exception {
        Clip clip = Clip.open(film("h264-turned-back.mp4"), () -> false);
        assertThatThrownBy(() -> Still.write(clip, 0, folder.resolve("no/such/folder.png")))
                .isInstanceOf(ClipException.class)
                .hasMessageContaining("could not be written");
    }
}
