package levelback.clips.decode.internal;

import java.util.Arrays;
import java.util.BitSet;
import java.util.function.BooleanSupplier;
import levelback.clips.open.ClipException;
import levelback.clips.open.Watch;
import levelback.scoring.value.TimeBase;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
import org.bytedeco.ffmpeg.global.avcodec;
import org.bytedeco.ffmpeg.global.avutil;

/**
 * Every packet of the picture stream in file order, from one pass without decoding. Time stamps run on over a wrap of the
 * stream's clock (33 bits in a transport stream). Immutable once scanned.
 */
public final class PacketList {

    /** Stands for "no time stamp". */
    public static final long NONE = avutil.AV_NOPTS_VALUE;

    /** Three thousand years; a clock that counts from 1970 or 1601 stays within. */
    private static final double MOST_SECONDS = 1e11;

    private int count;
    private long[] pts = new long[1024];
    private long[] dts = new long[1024];
    private long[] position = new long[1024];
    private int[] size = new int[1024];
    private long[] duration = new long[1024];
    private byte[] flags = new byte[1024];
    private int[] keys = new int[0];
    private boolean changesInMidstream;
    private int endedBy;
    private int delay = MediaFile.UNKNOWN_DELAY;
    /** Keys by the container's word that may not show the right picture at once. */
    private final BitSet uncertain = new BitSet();

    private PacketPlaces byPlace = new PacketPlaces(0);

    private final long mostTicks;

    private PacketList(long mostTicks) {
        this.mostTicks = mostTicks;
    }

    private static long mostTicks(TimeBase base) {
        return (long) (MOST_SECONDS * base.denominator() / base.numerator());
    }

    static PacketList scan(MediaFile file, BooleanSupplier cancelled) throws ClipException {
        PacketList list = new PacketList(mostTicks(file.timeBase()));
        list.delay = file.stream().codecpar().video_delay();
        H264Entry entry = file.stream().codecpar().codec_id() == avcodec.AV_CODEC_ID_H264
                ? new H264Entry(file.stream().codecpar())
                : null;
        long wrap = 1L << Math.min(62, Math.max(1, file.stream().pts_wrap_bits()));
        long lap = 0;
        long lastRaw = NONE;
        while (true) {
            if ((list.count & 255) == 0) {
                Watch.tell(cancelled, false, file.fraction());
            }
            if ((list.count & 255) == 0 && cancelled.getAsBoolean()) {
                throw MediaFile.cancelled(file.file());
            }
            int error = file.read();
            if (error < 0) {
                if (error == avutil.AVERROR_EXIT()) {
                    throw MediaFile.cancelled(file.file());
                }
                list.endedBy = error;
                break;
            }
            AVPacket packet = file.packet();
            long raw = packet.dts() != NONE ? packet.dts() : packet.pts();
            if (raw != NONE) {
                if (lastRaw != NONE && wrap < (1L << 40)) {
                    if (raw < lastRaw - wrap / 2) {
                        lap += wrap;
                    } else if (raw > lastRaw + wrap / 2 && lap > 0) {
                        lap -= wrap;
                    }
                }
                lastRaw = raw;
            }
            if (entry != null && (packet.flags() & avcodec.AV_PKT_FLAG_KEY) != 0 && !entry.clean(packet)) {
                list.uncertain.set(list.count);
            }
            list.add(packet, lap);
        }
        list.finish();
        return list;
    }

    /** A stamp that a damaged file puts thousands of years away is none. */
    long believable(long ticks) {
        return ticks > mostTicks || ticks < -mostTicks ? NONE : ticks;
    }

    private void add(AVPacket packet, long lap) {
        if (count == size.length) {
            int more = count * 2;
            pts = Arrays.copyOf(pts, more);
            dts = Arrays.copyOf(dts, more);
            position = Arrays.copyOf(position, more);
            size = Arrays.copyOf(size, more);
            duration = Arrays.copyOf(duration, more);
            flags = Arrays.copyOf(flags, more);
        }
        pts[count] = packet.pts() == NONE ? NONE : believable(packet.pts() + lap);
        dts[count] = packet.dts() == NONE ? NONE : believable(packet.dts() + lap);
        position[count] = packet.pos();
        size[count] = packet.size();
        duration[count] = Math.max(0, believable(packet.duration()));
        flags[count] = (byte) packet.flags();
        if (count > 0
                && avcodec.av_packet_side_data_get(
                                packet.side_data(), packet.side_data_elems(), avcodec.AV_PKT_DATA_NEW_EXTRADATA)
                        != null) {
            changesInMidstream = true;
        }
        count++;
    }

    private void finish() {
        byPlace = new PacketPlaces(count);
        int[] found = new int[count];
        int n = 0;
        for (int i = 0; i < count; i++) {
            if (clean(i)) {
                found[n++] = i;
            }
            byPlace.put(handle(i), i);
        }
        keys = Arrays.copyOf(found, n);
    }

    private long handle(int packet) {
        return handle(position[packet], dts[packet], size[packet]);
    }

    private static long handle(long position, long dts, int size) {
        long place = position >= 0 ? position : dts * 31 + 17;
        return place * 0x9E3779B97F4A7C15L ^ size;
    }

    /** Which packet this is, or -1 where that can't be said. */
    int numberOf(AVPacket packet) {
        int number = byPlace.get(handle(packet.pos(), packet.dts(), packet.size()));
        boolean same = number >= 0 && size[number] == packet.size() && position[number] == packet.pos();
        return same ? number : -1;
    }

    /** How many. */
    public int count() {
        return count;
    }

    /** Presentation time stamp or {@link #NONE}. */
    public long pts(int packet) {
        return pts[packet];
    }

    /** Decoding time stamp or {@link #NONE}. */
    public long dts(int packet) {
        return dts[packet];
    }

    /** Byte at which it begins, or below 0 where the format does not say. */
    public long position(int packet) {
        return position[packet];
    }

    /** Bytes. */
    public int size(int packet) {
        return size[packet];
    }

    /** Ticks, 0 where unknown. */
    public long duration(int packet) {
        return duration[packet];
    }

    /** Whether decoding can begin here, as the container says. */
    public boolean key(int packet) {
        return (flags[packet] & avcodec.AV_PKT_FLAG_KEY) != 0;
    }

    /** Whether decoding can begin here and the very first picture is right; the decoder then flags it as a key frame. */
    public boolean clean(int packet) {
        return key(packet) && !uncertain.get(packet);
    }

    /** Whether it is decoded and never shown (before an edit list's start). */
    public boolean discarded(int packet) {
        return (flags[packet] & avcodec.AV_PKT_FLAG_DISCARD) != 0;
    }

    /** Whether the container knows that bytes are missing. */
    public boolean corrupt(int packet) {
        return (flags[packet] & avcodec.AV_PKT_FLAG_CORRUPT) != 0;
    }

    /** How far the decoder lags behind, in pictures, as it was found when the file was scanned. */
    int delay() {
        return delay;
    }

    /** Whether the codec's parameters change on the way. */
    public boolean changesInMidstream() {
        return changesInMidstream;
    }

    /** Whether reading ended by an error and not by the end of the file. */
    public boolean endedByError() {
        return endedBy != avutil.AVERROR_EOF();
    }

    /** Numbers of the packets at which decoding can begin, ascending. */
    int[] keys() {
        return keys;
    }

    void write(IndexBytes to) {
        to.number(mostTicks);
        to.longs(Arrays.copyOf(pts, count));
        to.longs(Arrays.copyOf(dts, count));
        to.longs(Arrays.copyOf(position, count));
        to.ints(Arrays.copyOf(size, count));
        to.longs(Arrays.copyOf(duration, count));
        to.bytes(Arrays.copyOf(flags, count));
        to.set(uncertain);
        to.number(changesInMidstream ? 1 : 0);
        to.number(endedBy);
        to.number(delay);
    }

    static PacketList read(IndexBytes from) {
        PacketList list = new PacketList(from.readLong());
        list.pts = from.readLongs();
        list.dts = from.readLongs();
        list.position = from.readLongs();
        list.size = from.readInts();
        list.duration = from.readLongs();
        list.flags = from.readBytes();
        list.uncertain.or(from.readSet());
        list.changesInMidstream = from.readInt() != 0;
        list.endedBy = from.readInt();
        list.delay = from.readInt();
        list.count = list.size.length;
        if (list.pts.length != list.count
                || list.dts.length != list.count
                || list.position.length != list.count
                || list.duration.length != list.count
                || list.flags.length != list.count) {
            throw new IllegalArgumentException("lists of packets of different length");
        }
        list.finish();
        return list;
    }

    /** Whether another scan found the very same packets. */
    boolean sameAs(PacketList other) {
        return count == other.count
                && Arrays.equals(pts, 0, count, other.pts, 0, count)
                && Arrays.equals(dts, 0, count, other.dts, 0, count)
                && Arrays.equals(position, 0, count, other.position, 0, count)
                && Arrays.equals(size, 0, count, other.size, 0, count)
                && Arrays.equals(flags, 0, count, other.flags, 0, count);
    }
}
