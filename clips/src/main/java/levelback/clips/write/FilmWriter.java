package levelback.clips.write;

import static org.bytedeco.ffmpeg.global.avcodec.*;
import static org.bytedeco.ffmpeg.global.avformat.*;
import static org.bytedeco.ffmpeg.global.avutil.*;
import static org.bytedeco.ffmpeg.global.swscale.*;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import org.bytedeco.ffmpeg.avcodec.AVCodec;
import org.bytedeco.ffmpeg.avcodec.AVCodecContext;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
import org.bytedeco.ffmpeg.avformat.AVFormatContext;
import org.bytedeco.ffmpeg.avformat.AVIOContext;
import org.bytedeco.ffmpeg.avformat.AVStream;
import org.bytedeco.ffmpeg.avutil.AVDictionary;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.avutil.AVRational;
import org.bytedeco.ffmpeg.swscale.SwsContext;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.DoublePointer;

/**
 * Encodes frames into a film: two B-frames between others, a key frame every 50. The same frames give the same bytes.
 * Used by one thread; {@link #finish()} completes the file, {@link #close()} alone leaves it incomplete.
 */
public final class FilmWriter implements AutoCloseable {

    /** What the film is written as. */
    public enum Kind {
        /** MPEG-4 part 2 in MP4. */
        MPEG4_IN_MP4(AV_CODEC_ID_MPEG4, "mp4"),
        /** MPEG-2 in a transport stream. */
        MPEG2_IN_TS(AV_CODEC_ID_MPEG2VIDEO, "mpegts");

        private final int codecId;
        private final String container;

        Kind(int codecId, String container) {
            this.codecId = codecId;
            this.container = container;
        }
    }

    private static final int KEY_FRAME_EVERY = 50;
    private static final int B_FRAMES = 2;
    private static final int QUALITY = 3;

    private final Path file;
    private final int width;
    private final int height;
    private final AVFormatContext container;
    private final AVCodecContext encoder;
    private final AVStream stream;
    private final AVFrame picture;
    private final AVPacket packet;
    private final SwsContext toYuv;
    private int frames;
    private boolean closed;

    /**
     * Begins a film; an existing file is replaced.
     *
     * @param file where to
     * @param rateNumerator frames a second, numerator
     * @param rateDenominator and denominator
     * @param recordedAt when its first picture was taken, as a camera writes it; to the second
     * @throws IOException if the file cannot be written
     */
    public FilmWriter(
            Path file, Kind kind, int width, int height, int rateNumerator, int rateDenominator, Instant recordedAt)
            throws IOException {
        this.file = file;
        this.width = width;
        this.height = height;
        av_log_set_level(AV_LOG_ERROR);
        container = new AVFormatContext(null);
        check(avformat_alloc_output_context2(container, null, kind.container, null), "prepared");
        AVCodec codec = avcodec_find_encoder(kind.codecId);
        if (codec == null || codec.isNull()) {
            throw new IOException("this build of FFmpeg cannot encode " + kind);
        }
        encoder = avcodec_alloc_context3(codec);
        encoder.width(width).height(height).pix_fmt(AV_PIX_FMT_YUV420P);
        encoder.time_base(rational(rateDenominator, rateNumerator));
        encoder.framerate(rational(rateNumerator, rateDenominator));
        encoder.gop_size(KEY_FRAME_EVERY).max_b_frames(B_FRAMES).thread_count(1);
        encoder.colorspace(AVCOL_SPC_SMPTE170M).color_range(AVCOL_RANGE_MPEG);
        encoder.flags(encoder.flags() | AV_CODEC_FLAG_QSCALE | AV_CODEC_FLAG_BITEXACT);
        encoder.global_quality(FF_QP2LAMBDA * QUALITY);
        if ((container.oformat().flags() & AVFMT_GLOBALHEADER) != 0) {
            encoder.flags(encoder.flags() | AV_CODEC_FLAG_GLOBAL_HEADER);
        }
        check(avcodec_open2(encoder, codec, (AVDictionary) null), "encoded");
        stream = avformat_new_stream(container, null);
        stream.time_base(encoder.time_base());
        stream.avg_frame_rate(encoder.framerate());
        check(avcodec_parameters_from_context(stream.codecpar(), encoder), "prepared");
        container.flags(container.flags() | AVFormatContext.AVFMT_FLAG_BITEXACT);
        AVIOContext out = new AVIOContext(null);
        try (BytePointer name = utf8("file:" + file.toAbsolutePath())) {
            check(avio_open(out, name, AVIO_FLAG_WRITE), "written");
        }
        container.pb(out);
        AVDictionary facts = new AVDictionary(null);
        check(
                av_dict_set(
                        facts,
                        "creation_time",
                        recordedAt.truncatedTo(ChronoUnit.SECONDS).toString(),
                        0),
                "prepared");
        container.metadata(facts);
        check(avformat_write_header(container, (AVDictionary) null), "written");
        picture = av_frame_alloc();
        picture.width(width).height(height).format(AV_PIX_FMT_YUV420P);
        picture.colorspace(AVCOL_SPC_SMPTE170M).color_range(AVCOL_RANGE_MPEG);
        check(av_frame_get_buffer(picture, 0), "prepared");
        packet = av_packet_alloc();
        toYuv = sws_getContext(
                width,
                height,
                AV_PIX_FMT_BGR24,
                width,
                height,
                AV_PIX_FMT_YUV420P,
                SWS_BILINEAR,
                null,
                null,
                (DoublePointer) null);
    }

    private static AVRational rational(int numerator, int denominator) {
        return av_make_q(numerator, denominator);
    }

    private static BytePointer utf8(String text) {
        byte[] bytes = (text + '\0').getBytes(StandardCharsets.UTF_8);
        return new BytePointer(bytes);
    }

    private int check(int result, String what) throws IOException {
        if (result < 0) {
            throw new IOException("the film " + file + " could not be " + what + " (FFmpeg error " + result + ")");
        }
        return result;
    }

    /**
     * Adds a frame.
     *
     * @param bgr blue, green, red bytes, rows packed
     */
    public void write(BytePointer bgr) throws IOException {
        check(av_frame_make_writable(picture), "encoded");
        try (org.bytedeco.javacpp.PointerPointer<BytePointer> planes =
                        new org.bytedeco.javacpp.PointerPointer<>(new BytePointer[] {bgr});
                org.bytedeco.javacpp.IntPointer strides = new org.bytedeco.javacpp.IntPointer(new int[] {3 * width})) {
            sws_scale(toYuv, planes, strides, 0, height, picture.data(), picture.linesize());
        }
        picture.pts(frames++);
        picture.quality(encoder.global_quality());
        send(picture);
    }

    private void send(AVFrame frame) throws IOException {
        check(avcodec_send_frame(encoder, frame), "encoded");
        while (true) {
            int result = avcodec_receive_packet(encoder, packet);
            if (result == AVERROR_EAGAIN() || result == AVERROR_EOF()) {
                return;
            }
            check(result, "encoded");
            if (packet.duration() == 0) {
                packet.duration(1);
            }
            av_packet_rescale_ts(packet, encoder.time_base(), stream.time_base());
            packet.stream_index(stream.index());
            check(av_interleaved_write_frame(container, packet), "written");
        }
    }

    /** Writes what the encoder still holds and the end of the file. */
    public void finish() throws IOException {
        send(new AVFrame(null));
        check(av_write_trailer(container), "written");
        close();
    }

    @Override
    public void close() {
        if (closed) {
            return;
        }
        closed = true;
        sws_freeContext(toYuv);
        av_packet_free(packet);
        av_frame_free(picture);
        avcodec_free_context(encoder);
        avio_closep(container.pb());
        avformat_free_context(container);
    }
}
