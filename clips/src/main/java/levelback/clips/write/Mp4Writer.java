package levelback.clips.write;

import static org.bytedeco.ffmpeg.global.avcodec.*;
import static org.bytedeco.ffmpeg.global.avformat.*;
import static org.bytedeco.ffmpeg.global.avutil.*;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import levelback.clips.decode.FrameColour;
import levelback.clips.decode.internal.NativeLog;
import levelback.scoring.value.TimeBase;
import org.bytedeco.ffmpeg.avcodec.AVCodec;
import org.bytedeco.ffmpeg.avcodec.AVCodecContext;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
import org.bytedeco.ffmpeg.avformat.AVFormatContext;
import org.bytedeco.ffmpeg.avformat.AVIOContext;
import org.bytedeco.ffmpeg.avformat.AVStream;
import org.bytedeco.ffmpeg.avutil.AVDictionary;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.javacpp.BytePointer;

/**
 * Encodes pictures as H.264 in MP4, each with a time of its own, its table of contents in front so that a phone can begin
 * before it has the whole. OpenH264 makes no B pictures: what goes in comes out in the same order. A picture with an odd
 * side, or one under 16 pixels, gets its last row or column again, since the codec cannot do without.
 */
final class Mp4Writer implements AutoCloseable {

    private static final int LEAST = 16;
    private static final int KEY_SECONDS = 2;
    private static final double BITS_PER_PIXEL = 0.15;
    private static final double MOST_FPS = 240;
    private static final int FINEST = 10;
    /** The coarsest step that it may take: about what a good camera records with. */
    private static final int COARSEST = 26;

    private final Path file;
    private final int width;
    private final int height;
    private final int codedWidth;
    private final int codedHeight;
    private final AVFormatContext container = new AVFormatContext(null);
    private final AVFrame picture = av_frame_alloc();
    private final AVPacket packet = av_packet_alloc();
    private AVCodecContext encoder = new AVCodecContext(null);
    private AVStream stream = new AVStream(null);
    private long duration;
    private boolean closed;

    /**
     * Begins a film.
     *
     * @param file an empty file to fill
     * @param colour what the numbers of its pictures mean
     * @param base its clock, numerator 1
     * @param fps for the encoder's bit budget only
     * @throws IOException if it cannot be written, in words for a person
     */
    Mp4Writer(Path file, int width, int height, FrameColour colour, TimeBase base, double fps) throws IOException {
        this.file = file;
        this.width = width;
        this.height = height;
        this.codedWidth = Math.max(LEAST, width + (width & 1));
        this.codedHeight = Math.max(LEAST, height + (height & 1));
        NativeLog.start();
        try {
            // A joined or damaged recording may seem to have any rate.
            begin(colour, base, Double.isFinite(fps) ? Math.min(Math.max(fps, 1), MOST_FPS) : 25);
        } catch (IOException failed) {
            close();
            throw failed;
        }
    }

    private void begin(FrameColour colour, TimeBase base, double fps) throws IOException {
        try (BytePointer name =
                        new BytePointer(("file:" + file.toAbsolutePath() + '\0').getBytes(StandardCharsets.UTF_8));
                BytePointer mp4 = new BytePointer("mp4")) {
            check(avformat_alloc_output_context2(container, null, mp4, name));
            AVCodec codec = avcodec_find_encoder_by_name("libopenh264");
            if (codec == null || codec.isNull()) {
                throw new IOException("this build of FFmpeg has no H.264 encoder");
            }
            encoder = avcodec_alloc_context3(codec);
            encoder.width(codedWidth).height(codedHeight).pix_fmt(AV_PIX_FMT_YUV420P);
            encoder.time_base(av_make_q(base.numerator(), base.denominator()));
            encoder.framerate(av_d2q(fps, 1_000_000));
            encoder.gop_size((int) Math.max(1, Math.round(fps * KEY_SECONDS)));
            encoder.bit_rate(Math.round(BITS_PER_PIXEL * codedWidth * codedHeight * fps));
            encoder.qmin(FINEST).qmax(COARSEST);
            encoder.sample_aspect_ratio(av_make_q(1, 1));
            encoder.colorspace(colour.matrix()).color_range(AVCOL_RANGE_MPEG);
            encoder.color_primaries(colour.primaries()).color_trc(colour.transfer());
            encoder.flags(encoder.flags() | AV_CODEC_FLAG_GLOBAL_HEADER);
            check(avcodec_open2(encoder, codec, (AVDictionary) null));
            stream = avformat_new_stream(container, null);
            stream.time_base(encoder.time_base());
            stream.avg_frame_rate(encoder.framerate());
            stream.sample_aspect_ratio(encoder.sample_aspect_ratio());
            check(avcodec_parameters_from_context(stream.codecpar(), encoder));
            AVIOContext out = new AVIOContext(null);
            check(avio_open(out, name, AVIO_FLAG_WRITE));
            container.pb(out);
            header(base);
        }
        picture.width(codedWidth).height(codedHeight).format(AV_PIX_FMT_YUV420P);
        picture.colorspace(colour.matrix()).color_range(AVCOL_RANGE_MPEG);
        check(av_frame_get_buffer(picture, 0));
    }

    private void header(TimeBase base) throws IOException {
        AVDictionary options = new AVDictionary(null);
        try {
            av_dict_set(options, "movflags", "+faststart", 0);
            av_dict_set(options, "video_track_timescale", Integer.toString(base.denominator()), 0);
            check(avformat_write_header(container, options));
        } finally {
            av_dict_free(options);
        }
    }

    private static int check(int result) throws IOException {
        if (result < 0) {
            throw new IOException(NativeLog.words(result));
        }
        return result;
    }

    /**
     * Adds a picture.
     *
     * @param yuv of the size given at the beginning
     * @param at when it is shown, in ticks; above the one before
     * @param ticks for how long
     */
    void write(Yuv yuv, long at, long ticks) throws IOException {
        if (yuv.width() != width || yuv.height() != height) {
            throw new IllegalArgumentException(yuv + " in a film of " + width + " by " + height);
        }
        check(av_frame_make_writable(picture));
        for (int plane = 0; plane < 3; plane++) {
            pad(yuv, plane);
        }
        picture.pts(at);
        picture.duration(ticks);
        duration = ticks;
        send(picture);
    }

    private void pad(Yuv yuv, int plane) {
        int wide = plane == 0 ? codedWidth : codedWidth / 2;
        int high = plane == 0 ? codedHeight : codedHeight / 2;
        int given = yuv.planeWidth(plane);
        int stride = picture.linesize(plane);
        ByteBuffer to = new BytePointer(picture.data(plane))
                .capacity((long) stride * high)
                .asBuffer();
        for (int y = 0; y < high; y++) {
            int row = yuv.planeAt(plane) + given * Math.min(y, yuv.planeHeight(plane) - 1);
            to.put(y * stride, yuv.planes(), row, given);
            for (int x = given; x < wide; x++) {
                to.put(y * stride + x, yuv.planes().get(row + given - 1));
            }
        }
    }

    private void send(AVFrame frame) throws IOException {
        check(avcodec_send_frame(encoder, frame));
        while (true) {
            int result = avcodec_receive_packet(encoder, packet);
            if (result == AVERROR_EAGAIN() || result == AVERROR_EOF()) {
                return;
            }
            check(result);
            packet.duration(duration);
            av_packet_rescale_ts(packet, encoder.time_base(), stream.time_base());
            packet.stream_index(stream.index());
            check(av_interleaved_write_frame(container, packet));
            check(container.pb().error());
        }
    }

    /** Writes what the encoder still holds, the table of contents and the end of the file. */
    void finish() throws IOException {
        send(new AVFrame(null));
        check(av_write_trailer(container));
        check(container.pb().error());
        check(avio_closep(container.pb()));
        container.pb(new AVIOContext(null));
        close();
    }

    @Override
    public void close() {
        if (closed) {
            return;
        }
        closed = true;
        av_packet_free(packet);
        av_frame_free(picture);
        if (!encoder.isNull()) {
            avcodec_free_context(encoder);
        }
        if (!container.isNull()) {
            if (container.pb() != null && !container.pb().isNull()) {
                avio_closep(container.pb());
            }
            avformat_free_context(container);
        }
    }
}
