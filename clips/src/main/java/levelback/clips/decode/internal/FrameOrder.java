package levelback.clips.decode.internal;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.BooleanSupplier;
import java.util.stream.IntStream;
import levelback.clips.open.ClipException;

/** Which frame of which packet stands where in presentation order, and where decoding can begin for it. Only what is found out while it is
 * read is added: check sums, and keys that lie. Safe to share. */
public final class FrameOrder {

    private static final int UNKNOWN = -1;

    private final PacketList packets;
    private final int[] packetOf;
    private final byte[] nthOf;
    private final long[] pts;
    private final BitSet key;
    private final Checks checks;
    /** First display number of a packet's frames, or below 0. */
    private final int[] firstOf;
    /** For each key packet the number of the first frame that decoding from it may show. */
    private final int[] keyShows;
    /** Places in the list of keys at which decoding can't begin after all; found while others read. */
    private final Set<Integer> lying = ConcurrentHashMap.newKeySet();

    private FrameOrder(PacketList packets, int[] packetOf, byte[] nthOf, long[] pts, BitSet key, Checks checks) {
        this.packets = packets;
        this.packetOf = packetOf;
        this.nthOf = nthOf;
        this.pts = pts;
        this.key = key;
        this.checks = checks;
        firstOf = new int[packets.count()];
        Arrays.fill(firstOf, UNKNOWN);
        for (int frame = packetOf.length - 1; frame >= 0; frame--) {
            firstOf[packetOf[frame]] = frame;
        }
        keyShows = new int[packets.keys().length];
        for (int i = 0; i < keyShows.length; i++) {
            keyShows[i] = shownFrom(packets.keys()[i]);
        }
    }

    private int shownFrom(int packet) {
        if (firstOf[packet] >= 0) {
            return firstOf[packet];
        }
        if (packets.discarded(packet) && packets.pts(packet) != PacketList.NONE) {
            int low = 0;
            while (low < pts.length && pts[low] != PacketList.NONE && pts[low] < packets.pts(packet)) {
                low++;
            }
            return low;
        }
        return Integer.MAX_VALUE; // gave no frame: not a place to begin
    }

    /** From the packets alone, if they are such that this is safe; the caller tries the beginning against a decode. */
    static Optional<FrameOrder> fromPackets(MediaFile file, PacketList packets) {
        int count = packets.count();
        boolean lazyContainer = file.raw() || file.container().equals("avi");
        boolean hiddenFrames = org.bytedeco.ffmpeg.global.avcodec.AV_CODEC_ID_VP8
                == file.stream().codecpar().codec_id();
        if (count == 0
                || lazyContainer
                || hiddenFrames
                || !packets.key(0)
                || packets.endedByError()
                || packets.changesInMidstream()) {
            return Optional.empty();
        }
        long lastDts = Long.MIN_VALUE;
        for (int i = 0; i < count; i++) {
            boolean inOrder = packets.dts(i) == PacketList.NONE || packets.dts(i) >= lastDts;
            if (packets.corrupt(i)
                    || packets.pts(i) == PacketList.NONE
                    || !inOrder
                    || (packets.pts(i) < packets.pts(0) && !packets.discarded(i))) {
                return Optional.empty();
            }
            lastDts = packets.dts(i) == PacketList.NONE ? lastDts : packets.dts(i);
        }
        int[] order = IntStream.range(0, count)
                .filter(i -> !packets.discarded(i))
                .boxed()
                .sorted(Comparator.comparingLong(packets::pts))
                .mapToInt(i -> i)
                .toArray();
        long[] pts = new long[order.length];
        BitSet key = new BitSet();
        for (int i = 0; i < order.length; i++) {
            pts[i] = packets.pts(order[i]);
            key.set(i, packets.clean(order[i]));
            if (i > 0 && pts[i] == pts[i - 1]) {
                return Optional.empty();
            }
        }
        return order.length == 0
                ? Optional.empty()
                : Optional.of(
                        new FrameOrder(packets, order, new byte[order.length], pts, key, new Checks(order.length)));
    }

    /** From a decode of the whole file, with a check of every picture. */
    static FrameOrder fromDecode(MediaFile file, PacketList packets, FullDecode all) {
        int[] packetOf = Arrays.copyOf(all.packet, all.count);
        long[] pts = new long[all.count];
        for (int i = 0; i < all.count; i++) {
            long own = packets.pts(packetOf[i]);
            pts[i] = file.raw()
                    ? PacketList.NONE
                    : own != PacketList.NONE && all.nth[i] == 0 ? own : packets.believable(all.pts[i]);
        }
        return new FrameOrder(
                packets, packetOf, Arrays.copyOf(all.nth, all.count), pts, all.key, Checks.of(all.check, all.count));
    }

    /** Whether a decode that was stopped early agrees with this order as far as it went. */
    boolean agreesWith(FullDecode beginning) {
        if (beginning.errors > 0 || beginning.count == 0) {
            return false;
        }
        for (int i = 0; i < Math.min(beginning.count, packetOf.length); i++) {
            if (beginning.packet[i] != packetOf[i]
                    || beginning.nth[i] != 0
                    || beginning.suspect.get(i)
                    || beginning.key.get(i) != key.get(i)) {
                return false;
            }
        }
        return true;
    }

    /** The packets. */
    public PacketList packets() {
        return packets;
    }

    /** How many frames come out. */
    public int frames() {
        return packetOf.length;
    }

    /** Packet that a frame comes from. */
    public int packetOf(int frame) {
        return packetOf[frame];
    }

    /** Time stamp of a frame, or {@link PacketList#NONE}. */
    public long pts(int frame) {
        return pts[frame];
    }

    /** Whether it is a key frame. */
    public boolean key(int frame) {
        return key.get(frame);
    }

    /** Display number of a packet's frame, or below 0 where it is not shown. */
    int frameOf(int packet, int nth) {
        int frame = packet < firstOf.length ? firstOf[packet] : UNKNOWN;
        while (frame >= 0 && frame < packetOf.length && packetOf[frame] == packet) {
            if (nthOf[frame] == nth) {
                return frame;
            }
            frame++;
        }
        return UNKNOWN;
    }

    /** The check sums of the pictures, as far as they are known. */
    Checks checks() {
        return checks;
    }

    /** How many frames from the first on have the check sum of a decode from the start. */
    public int checksKnown() {
        return checks.knownFromStart();
    }

    /** Place, in the list of key packets, of the last one from which a frame can be decoded; below 0 for none. */
    int keyFor(int frame, BitSet struckOut) {
        int[] keys = packets.keys();
        int at = Arrays.binarySearch(keys, packetOf[frame]);
        for (int i = at >= 0 ? at : -at - 2; i >= 0; i--) {
            if (!struckOut.get(i) && !lying.contains(i) && keyShows[i] <= frame) {
                return i;
            }
        }
        return -1;
    }

    /** Strikes out a key packet for every reader: decoding from it gave another picture than decoding from the start. */
    void strikeOut(int place) {
        lying.add(place);
    }

    int keyPacket(int place) {
        return packets.keys()[place];
    }

    int keyShows(int place) {
        return keyShows[place];
    }

    /** Writes it, packets and all. */
    public void write(IndexBytes to) {
        packets.write(to);
        to.ints(packetOf);
        to.bytes(nthOf);
        to.longs(pts);
        to.set(key);
        checks.write(to);
    }

    /** Reads it. @throws RuntimeException of any kind where the bytes are none of an order */
    public static FrameOrder read(IndexBytes from) {
        PacketList packets = PacketList.read(from);
        int[] packetOf = from.readInts();
        byte[] nthOf = from.readBytes();
        long[] pts = from.readLongs();
        BitSet key = from.readSet();
        Checks checks = Checks.read(from, packetOf.length);
        boolean fits = packetOf.length > 0
                && nthOf.length == packetOf.length
                && pts.length == packetOf.length
                && Arrays.stream(packetOf).allMatch(packet -> packet >= 0 && packet < packets.count());
        if (!fits) {
            throw new IllegalArgumentException("frames that are not those of the packets");
        }
        return new FrameOrder(packets, packetOf, nthOf, pts, key, checks);
    }

    /** Whether a file still has the packets of this order. */
    public boolean isOf(Path file, BooleanSupplier cancelled) throws ClipException {
        try (MediaFile media = MediaFile.open(file, cancelled)) {
            return packets.sameAs(PacketList.scan(media, cancelled));
        }
    }
}
