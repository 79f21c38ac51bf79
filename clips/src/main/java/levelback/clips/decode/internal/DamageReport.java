package levelback.clips.decode.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import levelback.clips.index.IndexedFrame;
import levelback.clips.open.ClipFacts.Damage;
import levelback.scoring.value.MediaTime;
import org.bytedeco.ffmpeg.global.avformat;

/** Names what is wrong with a recording that can be read in part. */
public final class DamageReport {

    private static final long SHORT_BY_US = 500_000;
    /** A packet this small is a place-holder (not-coded picture), not a lost one. */
    private static final int PLACE_HOLDER_BYTES = 16;

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
    }

    private boolean before(int packet, long startUs) {
        OptionalLong at = times.packetUs(packet);
        return at.isPresent() && at.getAsLong() < startUs;
    }

    private void concealed(FullDecode all) {
        List<IndexedFrame> frames = times.index().frames();
        for (int first = all.suspect.nextSetBit(0); first >= 0; first = all.suspect.nextSetBit(first)) {
            int end = all.suspect.nextClearBit(first);
            long toUs = end < frames.size() ? frames.get(end).timeUs() : times.endUs();
            damage.add(new Damage(
                    "pictures " + first + " to " + (end - 1) + " were decoded with errors and patched by the decoder",
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
            boolean nothing = !all.gave.get(i) && !packets.discarded(i) && packets.size(i) > PLACE_HOLDER_BYTES;
            OptionalLong at = times.packetUs(i);
            if (nothing && at.isPresent() && at.getAsLong() >= startUs) {
                int run = i;
                while (run + 1 < packets.count() && !all.gave.get(run + 1)) {
                    run++;
                }
                long toUs = times.packetUs(run).orElse(at.getAsLong());
                damage.add(new Damage(
                        (run - i + 1) + " pictures are missing: their data cannot be decoded",
                        at.getAsLong(),
                        Math.max(at.getAsLong(), toUs)));
                found = true;
                i = run;
            }
        }
        if (!found && damage.isEmpty()) {
            damage.add(new Damage("the decoder met data that it could not read", startUs, times.endUs()));
        }
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
        } else if (endedInMid(packets) || (packets.count() > 0 && packets.corrupt(packets.count() - 1))) {
            damage.add(new Damage("the file is cut off in mid-picture at its end", endUs, endUs));
        }
    }

    /** The reader of JPEG parts calls the end of the file an error, whole or not. */
    private boolean endedInMid(PacketList packets) {
        return packets.endedByError() && !file.container().equals("mpjpeg");
    }

    private OptionalLong promisedEndUs() {
        long startUs = times.index().frames().get(0).timeUs();
        long ticks = survey.order().packets().believable(file.stream().duration());
        if (file.container().startsWith("mov") && ticks != PacketList.NONE && ticks > 0) {
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
