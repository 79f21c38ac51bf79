package levelback.clips.decode.internal;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Optional;
import java.util.Set;
import java.util.function.BooleanSupplier;
import levelback.clips.open.ClipException;
import levelback.clips.open.ClipException.Reason;
import levelback.scoring.value.TimeBase;
import org.bytedeco.ffmpeg.avcodec.AVCodecParameters;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
import org.bytedeco.ffmpeg.avformat.AVFormatContext;
import org.bytedeco.ffmpeg.avformat.AVStream;
import org.bytedeco.ffmpeg.avutil.AVDictionary;
import org.bytedeco.ffmpeg.avutil.AVDictionaryEntry;
import org.bytedeco.ffmpeg.global.avcodec;
import org.bytedeco.ffmpeg.global.avformat;
import org.bytedeco.ffmpeg.global.avutil;
import org.bytedeco.javacpp.BytePointer;

/**
 * One open local file and its picture stream. Two white-lists keep a renamed playlist from reaching any other file or
 * the network: only the protocol {@code file}, and only formats that hold their own pictures.
 */
public final class MediaFile implements AutoCloseable {

    private static final String FORMATS =
            "mov,mp4,m4a,3gp,3g2,mj2,matroska,webm,avi,mpegts,mpeg,h264,hevc,mpegvideo,m4v,mjpeg,mpjpeg,obu,ivf,flv,asf,"
                    + "mxf,ogg,dv,dhav";

    /** What an MP4 or MOV file can begin with: ISO/IEC 14496-12, 4.3 and 8; "wide" and "pnot" from QuickTime. */
    private static final Set<String> MP4_BOXES =
            Set.of("ftyp", "styp", "moov", "moof", "mdat", "free", "skip", "wide", "pnot", "uuid", "sidx", "pdin");

    /** Formats without time stamps of their own. */
    private static final Set<String> RAW = Set.of("h264", "hevc", "mpegvideo", "m4v", "mjpeg", "mpjpeg", "obu");

    /** Stands for a decoder's delay that has to be found out. */
    static final int UNKNOWN_DELAY = -1;

    private final Path file;
    private final AVFormatContext format;
    private final AVStream stream;
    private final AVPacket packet;
    private final long interruptName;
    private boolean closed;

    private MediaFile(Path file, AVFormatContext format, AVStream stream, long interruptName) {
        this.file = file;
        this.format = format;
        this.stream = stream;
        this.interruptName = interruptName;
        this.packet = avcodec.av_packet_alloc();
    }

    /**
     * Opens a file and finds its first picture stream that is not a cover picture.
     *
     * @param cancelled polled by every read, for as long as the file is open
     */
    public static MediaFile open(Path file, BooleanSupplier cancelled) throws ClipException {
        return open(file, UNKNOWN_DELAY, cancelled);
    }

    /**
     * Opens a file that was looked through before. FFmpeg decodes some pictures of every file it opens, to find out how far
     * its decoder lags behind; where that is known and the container tells the rest, those pictures need not be decoded.
     *
     * @param delay of the decoder in pictures as it was found then, or {@link #UNKNOWN_DELAY}
     */
    static MediaFile open(Path file, int delay, BooleanSupplier cancelled) throws ClipException {
        requirePlainFile(file);
        NativeLog.start();
        AVFormatContext format = avformat.avformat_alloc_context();
        long name = Interrupts.watch(format, cancelled);
        boolean kept = false;
        try {
            int error = openInput(file, format);
            if (error < 0) {
                throw refusal(file, error);
            }
            boolean told = delay != UNKNOWN_DELAY && tellsAll(format);
            if (!told) {
                error = avformat.avformat_find_stream_info(format, (AVDictionary) null);
                if (error < 0) {
                    throw refusal(file, error);
                }
            }
            MediaFile opened = new MediaFile(file, format, pictures(file, format), name);
            if (told) {
                opened.stream.codecpar().video_delay(delay);
            }
            kept = true;
            return opened;
        } finally {
            if (!kept) {
                if (!format.isNull()) {
                    avformat.avformat_close_input(format);
                }
                Interrupts.forget(name);
            }
        }
    }

    /** Whether an MP4 or MOV file's own header has all that decoding its pictures takes: H.264 or HEVC, with parameter sets. */
    private static boolean tellsAll(AVFormatContext format) {
        if (!format.iformat().name().getString().startsWith("mov")) {
            return false;
        }
        for (int i = 0; i < format.nb_streams(); i++) {
            AVCodecParameters kind = format.streams(i).codecpar();
            boolean cover = (format.streams(i).disposition() & avformat.AV_DISPOSITION_ATTACHED_PIC) != 0;
            if (kind.codec_type() == avutil.AVMEDIA_TYPE_VIDEO && !cover) {
                boolean tells =
                        kind.codec_id() == avcodec.AV_CODEC_ID_H264 || kind.codec_id() == avcodec.AV_CODEC_ID_HEVC;
                return tells && kind.extradata_size() > 0 && kind.width() > 0 && kind.height() > 0;
            }
        }
        return false;
    }

    private static int openInput(Path file, AVFormatContext format) {
        AVDictionary options = new AVDictionary(null);
        avutil.av_dict_set(options, "protocol_whitelist", "file", 0);
        avutil.av_dict_set(options, "format_whitelist", FORMATS, 0);
        try (BytePointer address = utf8("file:" + file.toAbsolutePath())) {
            return avformat.avformat_open_input(format, address, null, options);
        } finally {
            avutil.av_dict_free(options);
        }
    }

    /** JavaCPP's own conversion goes by the platform's charset; FFmpeg wants UTF-8. */
    private static BytePointer utf8(String text) {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        BytePointer pointer = new BytePointer(bytes.length + 1L);
        pointer.put(bytes, 0, bytes.length).put(bytes.length, (byte) 0);
        return pointer;
    }

    private static void requirePlainFile(Path file) throws ClipException {
        BasicFileAttributes attributes;
        try {
            attributes = Files.readAttributes(file, BasicFileAttributes.class);
        } catch (IOException missing) {
            throw new ClipException(
                    Reason.NOT_A_FILE,
                    "There is no file " + name(file) + " that you may read; check its name and place.");
        }
        if (attributes.isDirectory()) {
            throw new ClipException(
                    Reason.NOT_A_FILE, name(file) + " is a folder, not a recording; name one video file in it.");
        }
        if (!attributes.isRegularFile()) {
            throw new ClipException(
                    Reason.NOT_A_FILE,
                    name(file) + " is a pipe or a device, not a file; save the recording to a file first.");
        }
        if (!Files.isReadable(file)) {
            throw new ClipException(Reason.NOT_A_FILE, name(file) + " may not be read by you; check its permissions.");
        }
        if (attributes.size() == 0) {
            throw new ClipException(
                    Reason.NOT_A_RECORDING, name(file) + " is empty (0 bytes); copy it from the camera again.");
        }
    }

    private static AVStream pictures(Path file, AVFormatContext format) throws ClipException {
        AVStream found = null;
        for (int i = 0; i < format.nb_streams(); i++) {
            AVStream stream = format.streams(i);
            boolean cover = (stream.disposition() & avformat.AV_DISPOSITION_ATTACHED_PIC) != 0;
            if (found == null && stream.codecpar().codec_type() == avutil.AVMEDIA_TYPE_VIDEO && !cover) {
                found = stream;
            } else {
                stream.discard(avcodec.AVDISCARD_ALL);
            }
        }
        if (found == null && format.nb_streams() == 0) {
            throw new ClipException(
                    Reason.BROKEN,
                    name(file)
                            + " is cut off or damaged: its table of contents names neither pictures nor sound, and no"
                            + " frame can be found; copy it from the camera again.");
        }
        if (found == null) {
            throw new ClipException(
                    Reason.NO_PICTURES,
                    name(file) + " has no moving pictures in it (sound or a cover only); choose a video file.");
        }
        return found;
    }

    private static ClipException refusal(Path file, int error) {
        if (error == avutil.AVERROR_EXIT()) {
            return cancelled(file);
        }
        if (NativeLog.heard("moov atom not found") && beginsLikeMp4(file)) {
            return new ClipException(
                    Reason.BROKEN,
                    name(file)
                            + " was cut off before the camera had finished it: its table of contents (moov) is missing"
                            + " and no frame can be found; copy it from the camera again.");
        }
        return new ClipException(
                Reason.NOT_A_RECORDING,
                name(file) + " is not a video file that Levelback reads (FFmpeg: " + NativeLog.words(error)
                        + "); give the camera's own file, such as MP4, MOV, MKV, AVI or TS.");
    }

    /** A text that was renamed is not a recording that was cut off. */
    private static boolean beginsLikeMp4(Path file) {
        try (InputStream in = Files.newInputStream(file)) {
            byte[] head = in.readNBytes(8);
            String kind = head.length < 8 ? "" : new String(head, 4, 4, StandardCharsets.ISO_8859_1);
            return MP4_BOXES.contains(kind);
        } catch (IOException unreadable) {
            return false;
        }
    }

    static ClipException cancelled(Path file) {
        return new ClipException(Reason.CANCELLED, "Reading " + name(file) + " was stopped.");
    }

    /** The file as given, safe for one line. */
    public static String name(Path file) {
        return file.toString().replaceAll("\\p{Cntrl}+", " ");
    }

    /** The file. */
    public Path file() {
        return file;
    }

    AVStream stream() {
        return stream;
    }

    AVFormatContext format() {
        return format;
    }

    /** Container, FFmpeg's name. */
    public String container() {
        return format.iformat().name().getString();
    }

    /** Codec, FFmpeg's name. */
    public String codec() {
        return avcodec.avcodec_get_name(stream.codecpar().codec_id()).getString();
    }

    /** Whether the format has no time stamps of its own. */
    public boolean raw() {
        return RAW.contains(container());
    }

    /** The stream's clock. */
    public TimeBase timeBase() {
        return new TimeBase(
                Math.max(1, stream.time_base().num()),
                Math.max(1, stream.time_base().den()));
    }

    /** Something the file says about itself, from the stream or the file. */
    public Optional<String> note(String key) {
        return note(stream.metadata(), key).or(() -> note(format.metadata(), key));
    }

    private static Optional<String> note(AVDictionary notes, String key) {
        if (notes == null) {
            return Optional.empty();
        }
        AVDictionaryEntry entry = avutil.av_dict_get(notes, key, null, 0);
        return entry == null ? Optional.empty() : Optional.of(entry.value().getString(StandardCharsets.UTF_8));
    }

    /** Reads the next packet of the picture stream; 0 or FFmpeg's error number. */
    int read() {
        while (true) {
            avcodec.av_packet_unref(packet);
            int error = avformat.av_read_frame(format, packet);
            if (error < 0 || packet.stream_index() == stream.index()) {
                return error;
            }
        }
    }

    /** How far into the file the packet read last lies, 0 to 1. */
    double fraction() {
        long bytes = avformat.avio_size(format.pb());
        return bytes <= 0 || packet.pos() < 0 ? 0 : (double) packet.pos() / bytes;
    }

    /** The packet read last; valid until the next read. */
    AVPacket packet() {
        return packet;
    }

    @Override
    public void close() {
        if (!closed) {
            closed = true;
            avcodec.av_packet_free(packet);
            avformat.avformat_close_input(format);
            Interrupts.forget(interruptName);
        }
    }
}
