package levelback.clips.decode.internal;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.IntStream;
import levelback.clips.index.IndexedFrame;
import levelback.clips.open.ClipFacts.Damage;
import levelback.scoring.value.MediaTime;
import org.bytedeco.ffmpeg.global.avformat;

/** Names what is wrong with a recording that can be read in part. */
public final class DamageReport {

    private static final long SHORT_BY_US = 500_000;
    /** A packet this small is a place-holder (not-coded picture), not a lost one. */
    private static final int PLACE_HOLDER_BYTES = 16;

    /** So many pictures of those read last may have been waiting for one that is lost. */
    private static final int REORDERED = 8;
    /** Enough to know how far apart they are. */
    private static final int READ_BACK = 32;

    private final MediaFile file;
    private final Survey survey;
    private final FrameTimes times;
    private final List<Damage> damage = new ArrayList<>();

    private DamageReport(MediaFile file, Survey survey, FrameTimes times) {
        this.file = file;
        this.survey = survey;
        this.times = times;
    }

    /** All spans that cannot be trusted, in order of time. */
    public static List<Damage> of(MediaFile file, Survey survey, FrameTimes times) {
        DamageReport report = new DamageReport(file, survey, times);
        survey.wholeDecode().ifPresent(report::decoded);
        report.cutOff();
        report.damage.sort(java.util.Comparator.comparingLong(Damage::fromUs));
        return List.copyOf(report.damage);
    }

    private void decoded(FullDecode all) {
        PacketList packets = survey.order().packets();
        long startUs = times.index().frames().get(0).timeUs();
        int firstGiven = all.gave.nextSetBit(0);
        int lost = 0;
        long from = startUs;
        boolean begins = !packets.key(0) || all.errors > 0 || !packets.discarded(0);
        for (int i = 0; begins && i < packets.count(); i++) {
            boolean leading = i < firstGiven || before(i, startUs);
            if (leading && !all.gave.get(i) && !packets.discarded(i) && packets.size(i) > PLACE_HOLDER_BYTES) {
                lost++;
                from = Math.min(from, times.packetUs(i).orElse(startUs));
            }
        }
        if (lost > 0) {
            damage.add(new Damage(
                    "the first " + lost
                            + " pictures lean on pictures from before the file begins and cannot be decoded",
                    from,
                    startUs));
        }
        concealed(all);
        if (all.errors > 0) {
            gaps(all, startUs);
        }
        leaning(all);
    }

    private boolean before(int packet, long startUs) {
        OptionalLong at = times.packetUs(packet);
        return at.isPresent() && at.getAsLong() < startUs;
    }

    private void concealed(FullDecode all) {
        BitSet patched = (BitSet) all.suspect.clone();
        for (int packet = all.complained.nextSetBit(0); packet >= 0; packet = all.complained.nextSetBit(packet + 1)) {
            int frame =
                    packet < survey.order().packets().count() ? survey.order().frameOf(packet, 0) : -1;
            if (frame >= 0) {
                patched.set(frame);
            }
        }
        List<IndexedFrame> frames = times.index().frames();
        for (int first = patched.nextSetBit(0); first >= 0; first = patched.nextSetBit(first)) {
            int end = patched.nextClearBit(first);
            long toUs = end < frames.size() ? frames.get(end).timeUs() : times.endUs();
            String which =
                    end == first + 1 ? "picture " + first + " was" : "pictures " + first + " to " + (end - 1) + " were";
            damage.add(new Damage(
                    which + " decoded with errors and patched by the decoder",
                    frames.get(first).timeUs(),
                    toUs));
            first = end;
        }
    }

    /** Packets in the middle that gave nothing, where the decoder complained. */
    private void gaps(FullDecode all, long startUs) {
        PacketList packets = survey.order().packets();
        boolean found = false;
        for (int i = Math.max(0, all.gave.nextSetBit(0)); i < packets.count(); i++) {
            OptionalLong at = times.packetUs(i);
            if (!lost(all, i) || at.isEmpty() || at.getAsLong() < startUs) {
                continue;
            }
            int end = i;
            long fromUs = at.getAsLong();
            long toUs = fromUs;
            int count = 0;
            for (; end < packets.count() && !all.gave.get(end); end++) {
                OptionalLong each = times.packetUs(end);
                if (lost(all, end) && each.isPresent()) {
                    count++;
                    fromUs = Math.min(fromUs, each.getAsLong());
                    toUs = Math.max(toUs, each.getAsLong() + times.stepUs());
                }
            }
            damage.add(new Damage(
                    count == 1
                            ? "a picture is missing: its data cannot be decoded"
                            : count + " pictures are missing: their data cannot be decoded",
                    fromUs,
                    toUs));
            found = true;
            i = end;
        }
        if (!found && damage.isEmpty()) {
            damage.add(new Damage("the decoder met data that it could not read", startUs, times.endUs()));
        }
    }

    private boolean lost(FullDecode all, int packet) {
        PacketList packets = survey.order().packets();
        return !all.gave.get(packet) && !packets.discarded(packet) && packets.size(packet) > PLACE_HOLDER_BYTES;
    }

    /** From each break on until decoding begins afresh, pictures may be made from damaged or missing ones. */
    private void leaning(FullDecode all) {
        PacketList packets = survey.order().packets();
        int first = Math.max(0, all.gave.nextSetBit(0));
        for (int i = first; i < packets.count(); i++) {
            if (!broken(all, i, first)) {
                continue;
            }
            long fromUs = breaksAtUs(all, i);
            int end = i + 1;
            while (end < packets.count() && (!packets.clean(end) || broken(all, end, first))) {
                fromUs = Math.min(fromUs, Math.min(timeUs(end).orElse(fromUs), breaksAtUs(all, end)));
                end++;
            }
            long toUs = end < packets.count() ? timeUs(end).orElse(times.endUs()) : times.endUs();
            if (toUs > fromUs) {
                damage.add(new Damage(
                        "pictures from here on may lean on what is damaged or missing, until the next key picture",
                        fromUs,
                        toUs,
                        true));
            }
            i = end - 1;
        }
    }

    private boolean broken(FullDecode all, int packet, int first) {
        int frame = survey.order().frameOf(packet, 0);
        return all.complained.get(packet)
                || (packet > first && (all.brokenBefore.get(packet) || tornOff(packet)))
                || (frame >= 0 && all.suspect.get(frame))
                || (all.errors > 0 && lost(all, packet));
    }

    /**
     * Whether the reader knows that bytes of it are missing and decoding does not begin afresh right behind it: that is the
     * seam of two recordings that were joined, and every picture is there.
     */
    private boolean tornOff(int packet) {
        PacketList packets = survey.order().packets();
        boolean seam = false; // the mark may stand on the last picture but one
        for (int next = packet + 1; next <= packet + 2 && next < packets.count(); next++) {
            seam |= packets.clean(next);
        }
        return packets.corrupt(packet) && !seam;
    }

    /**
     * Where bytes are missing before a packet, the pictures between it and the last ones are missing too, and the last ones
     * may have lost their own ends.
     */
    private long breaksAtUs(FullDecode all, int packet) {
        long own = timeUs(packet).orElse(times.endUs());
        if (!all.brokenBefore.get(packet)) {
            return own;
        }
        return Math.min(own, lastSoundUs(packet));
    }

    /** Up to where the pictures read before a packet are all there and whole: the last two may have lost their ends. */
    private long lastSoundUs(int packet) {
        long from = holeUs(packet);
        for (int before = Math.max(0, packet - 2); before < packet; before++) {
            from = Math.min(from, timeUs(before).orElse(from));
        }
        return from;
    }

    /** Where pictures are missing among those read last before a packet, since they were to be read behind later ones. */
    private long holeUs(int packet) {
        long[] read = IntStream.range(Math.max(0, packet - READ_BACK), packet)
                .mapToObj(this::timeUs)
                .flatMapToLong(OptionalLong::stream)
                .sorted()
                .toArray();
        if (read.length < 3) {
            return Long.MAX_VALUE;
        }
        long[] steps = IntStream.range(1, read.length)
                .mapToLong(i -> read[i] - read[i - 1])
                .sorted()
                .toArray();
        long usual = steps[steps.length / 2];
        for (int i = Math.max(1, read.length - REORDERED); i < read.length; i++) {
            if (read[i] - read[i - 1] > usual * 3 / 2) {
                return read[i - 1] + usual;
            }
        }
        return Long.MAX_VALUE;
    }

    /** When a packet's picture is shown, or would be. */
    private OptionalLong timeUs(int packet) {
        int frame = survey.order().frameOf(packet, 0);
        return frame >= 0 ? OptionalLong.of(times.index().frames().get(frame).timeUs()) : times.packetUs(packet);
    }

    private void cutOff() {
        PacketList packets = survey.order().packets();
        long endUs = times.endUs();
        OptionalLong promised = promisedEndUs();
        if (promised.isPresent() && promised.getAsLong() > endUs + SHORT_BY_US) {
            damage.add(new Damage(
                    "the file is cut off: its header promises pictures up to here, and they are not in it",
                    endUs,
                    promised.getAsLong()));
            long holeUs = holeUs(packets.count());
            if (holeUs < endUs) {
                damage.add(new Damage(
                        "pictures are missing that were stored behind later ones, past where the file is cut off",
                        holeUs,
                        times.lastUs(),
                        true));
            }
        } else if (endsInMidPacket()
                || endedInMid(packets)
                || (packets.count() > 0 && packets.corrupt(packets.count() - 1))) {
            damage.add(new Damage("the file is cut off in mid-picture at its end", endUs, endUs));
        }
    }

    /** The reader of JPEG parts calls the end of the file an error, whole or not. */
    private boolean endedInMid(PacketList packets) {
        return packets.endedByError() && !file.container().equals("mpjpeg");
    }

    /**
     * Whether a transport stream ends inside a packet: packets are 188 bytes long, or 204 with a check code, or 192 with a
     * time of 4 bytes in front; each begins with 47 hex (ISO/IEC 13818-1, 2.4.3.2). Other bytes behind the last packet are
     * something that a recorder has left there.
     */
    private boolean endsInMidPacket() {
        if (!file.container().equals("mpegts")) {
            return false;
        }
        try (FileChannel bytes = FileChannel.open(file.file(), StandardOpenOption.READ)) {
            for (int length : new int[] {188, 192, 204}) {
                int sync = length == 192 ? 4 : 0;
                long rest = bytes.size() % length;
                long start = bytes.size() - rest;
                if (rest > sync && synced(bytes, start + sync) && synced(bytes, start + sync - length)) {
                    return true;
                }
            }
            return false;
        } catch (IOException gone) {
            return false;
        }
    }

    private static boolean synced(FileChannel bytes, long at) throws IOException {
        ByteBuffer one = ByteBuffer.allocate(1);
        return at >= 0 && bytes.read(one, at) == 1 && one.get(0) == 0x47;
    }

    private OptionalLong promisedEndUs() {
        long startUs = times.index().frames().get(0).timeUs();
        if (file.container().equals("flv") && file.format().duration() > 0) {
            return OptionalLong.of(startUs + file.format().duration());
        }
        boolean avi = file.container().equals("avi"); // its head counts pictures, and its clock ticks once for each
        long ticks = survey.order()
                .packets()
                .believable(avi ? file.stream().nb_frames() : file.stream().duration());
        if ((avi || file.container().startsWith("mov")) && ticks != PacketList.NONE && ticks > 0) {
            return OptionalLong.of(startUs + new MediaTime(ticks, file.timeBase()).timeUs());
        }
        if (!file.container().startsWith("matroska")) {
            return OptionalLong.empty();
        }
        Optional<String> own = file.note("DURATION");
        if (own.isPresent()) {
            return clock(own.get());
        }
        boolean alone = file.format().nb_streams() == 1;
        boolean header = file.format().duration_estimation_method() == avformat.AVFMT_DURATION_FROM_STREAM
                || file.format().duration() > 0;
        return alone && header && file.format().duration() > 0
                ? OptionalLong.of(file.format().duration())
                : OptionalLong.empty();
    }

    /** {@code 00:00:03.560000000} as Matroska's tag has it. */
    private static OptionalLong clock(String text) {
        String[] parts = text.strip().split(":", -1);
        try {
            if (parts.length != 3) {
                return OptionalLong.empty();
            }
            double seconds = Integer.parseInt(parts[0]) * 3600.0
                    + Integer.parseInt(parts[1]) * 60.0
                    + Double.parseDouble(parts[2]);
            return OptionalLong.of(Math.round(seconds * 1e6));
        } catch (NumberFormatException unreadable) {
            return OptionalLong.empty();
        }
    }
}
