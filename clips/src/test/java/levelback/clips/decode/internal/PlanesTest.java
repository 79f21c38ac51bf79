package levelback.clips.decode.internal;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.ByteBuffer;
import java.util.Random;
import java.util.zip.CRC32C;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.global.avutil;
import org.bytedeco.javacpp.BytePointer;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PlanesTest {

    /** The packed bytes are FFmpeg's own (av_image_copy_to_buffer), of which its framemd5 is the MD5. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "yuv420p",
                "yuvj420p",
                "yuv422p",
                "yuv444p",
                "yuv411p",
                "yuv410p",
                "yuv440p",
                "yuv420p10le",
                "yuv422p10le",
                "yuv444p12le",
                "nv12",
                "p010le",
                "yuyv422",
                "gray",
                "gray10le",
                "rgb24",
                "bgra",
                "gbrp",
                "yuva420p",
                "pal8",
                "rgb565le"
            })
    void theCheckSumIsOfThePackedPicture(String format) {
        for (int[] size : new int[][] {{64, 48}, {63, 47}, {130, 3}, {1, 1}, {1920, 8}}) {
            AVFrame frame = avutil.av_frame_alloc();
            frame.format(avutil.av_get_pix_fmt(format)).width(size[0]).height(size[1]);
            assertThat(avutil.av_frame_get_buffer(frame, 0)).isZero();
            Random random = new Random(size[0]);
            for (int i = 0; i < 8 && frame.buf(i) != null; i++) {
                byte[] noise = new byte[(int) frame.buf(i).size()];
                random.nextBytes(noise);
                frame.buf(i).data().put(noise, 0, noise.length);
            }
            int bytes = avutil.av_image_get_buffer_size(frame.format(), size[0], size[1], 1);
            try (Planes planes = new Planes();
                    BytePointer packed = new BytePointer(bytes)) {
                avutil.av_image_copy_to_buffer(
                        packed, bytes, frame.data(), frame.linesize(), frame.format(), size[0], size[1], 1);
                CRC32C expected = new CRC32C();
                ByteBuffer all = packed.asBuffer();
                expected.update(all);
                assertThat(planes.check(frame))
                        .as("%s %d x %d", format, size[0], size[1])
                        .isEqualTo((int) expected.getValue());
            } finally {
                avutil.av_frame_free(frame);
            }
        }
    }
}
