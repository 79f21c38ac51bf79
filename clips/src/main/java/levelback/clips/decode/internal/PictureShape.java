package levelback.clips.decode.internal;

import java.nio.IntBuffer;
import org.bytedeco.ffmpeg.avcodec.AVPacketSideData;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.avutil.AVFrameSideData;
import org.bytedeco.ffmpeg.avutil.AVRational;
import org.bytedeco.ffmpeg.global.avcodec;
import org.bytedeco.ffmpeg.global.avformat;
import org.bytedeco.ffmpeg.global.avutil;
import org.bytedeco.javacpp.BytePointer;

/**
 * How the pictures are stored.
 *
 * @param width stored width in pixels
 * @param height stored height in pixels
 * @param pixelFormat FFmpeg's name
 * @param sampleAspectRatio width of a pixel : its height
 * @param rotationDegrees clockwise turn that shows it upright: 0, 90, 180 or 270
 */
public record PictureShape(int width, int height, String pixelFormat, String sampleAspectRatio, int rotationDegrees) {

    /** A pixel more than this many times as wide as high is a broken header, not a camera. */
    private static final int MOST_ASPECT = 64;

    private static final int MATRIX_BYTES = 36;

    static PictureShape of(MediaFile file, AVFrame frame) {
        BytePointer name = avutil.av_get_pix_fmt_name(frame.format());
        return new PictureShape(
                frame.width(),
                frame.height(),
                name == null ? "unknown" : name.getString(),
                aspect(file, frame),
                rotation(file, frame));
    }

    private static String aspect(MediaFile file, AVFrame frame) {
        AVRational ratio = avformat.av_guess_sample_aspect_ratio(file.format(), file.stream(), frame);
        int wide = ratio.num();
        int high = ratio.den();
        if (wide <= 0 || high <= 0 || wide > (long) MOST_ASPECT * high || high > (long) MOST_ASPECT * wide) {
            return "1:1";
        }
        return wide + ":" + high;
    }

    private static int rotation(MediaFile file, AVFrame frame) {
        AVPacketSideData stream = avcodec.av_packet_side_data_get(
                file.stream().codecpar().coded_side_data(),
                file.stream().codecpar().nb_coded_side_data(),
                avcodec.AV_PKT_DATA_DISPLAYMATRIX);
        if (stream != null && stream.size() >= MATRIX_BYTES) {
            return clockwise(stream.data());
        }
        AVFrameSideData own = avutil.av_frame_get_side_data(frame, avutil.AV_FRAME_DATA_DISPLAYMATRIX);
        return own != null && own.size() >= MATRIX_BYTES ? clockwise(own.data()) : 0;
    }

    private static int clockwise(BytePointer matrix) {
        IntBuffer numbers = matrix.capacity(MATRIX_BYTES)
                .asBuffer()
                .order(java.nio.ByteOrder.nativeOrder())
                .asIntBuffer();
        int[] nine = new int[9];
        numbers.get(nine);
        double anticlockwise = avutil.av_display_rotation_get(nine);
        if (Double.isNaN(anticlockwise)) {
            return 0;
        }
        long quarters = Math.round(-anticlockwise / 90);
        return (int) Math.floorMod(quarters, 4L) * 90;
    }
}
