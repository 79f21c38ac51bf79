package levelback.player.score;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedSet;
import java.util.StringJoiner;
import java.util.TreeSet;
import levelback.clips.open.ClipFacts.Damage;

/** Says in words which of the frames shown cannot be read, where pictures are missing, and that a recording was cut off. */
final class DamageLines {

    private final List<Long> timesUs;
    private final int first;
    private final int last;
    private final int base;
    private final TreeSet<Integer> unread = new TreeSet<>();
    private final TreeSet<Integer> missingAfter = new TreeSet<>();
    private boolean cutOff;
    private boolean unsure;

    private DamageLines(List<Long> timesUs, int first, int last, int base) {
        this.timesUs = timesUs;
        this.first = first;
        this.last = last;
        this.base = base;
    }

    /**
     * One sentence of each kind of damage that touches the frames shown.
     *
     * @param timesUs time of every frame of the recording, in order
     * @param damage spans as the recording's facts give them; the end of a span is no longer part of it
     * @param unreadable frames that turned out to be unreadable while they were shown
     * @param first first frame shown
     * @param last last frame shown
     * @param base taken off a frame's number for the words
     */
    static List<String> of(
            List<Long> timesUs, List<Damage> damage, SortedSet<Integer> unreadable, int first, int last, int base) {
        DamageLines lines = new DamageLines(timesUs, first, last, base);
        damage.forEach(lines::take);
        unreadable.forEach(lines.unread::add);
        return lines.words();
    }

    private void take(Damage span) {
        int frames = timesUs.size();
        if (span.fromUs() > timesUs.get(frames - 1)) {
            cutOff |= last == frames - 1;
            return;
        }
        List<Integer> within = new ArrayList<>();
        int before = -1;
        for (int frame = 0; frame < frames; frame++) {
            long at = timesUs.get(frame);
            if (at < span.fromUs()) {
                before = frame;
            } else if (at < span.toUs() || at == span.fromUs() && span.toUs() == span.fromUs()) {
                within.add(frame);
            }
        }
        if (within.isEmpty()) {
            // The lost pictures are no frames of the recording; a gap stands between two that are.
            if (before >= first - 1 && before <= last) {
                missingAfter.add(before);
            }
        } else if (within.size() == frames) {
            unsure = true;
        } else {
            within.stream()
                    .filter(frame -> frame >= first && frame <= last)
                    .forEach(unread::add);
        }
    }

    private List<String> words() {
        List<String> words = new ArrayList<>();
        if (unsure) {
            words.add(Words.of("film.unsure"));
        }
        if (!unread.isEmpty()) {
            words.add(unreadWords());
        }
        for (int frame : missingAfter) {
            words.add(
                    frame < 0
                            ? Words.of("film.missingFirst", number(0))
                            : frame + 1 < timesUs.size()
                                    ? Words.of("film.missing", number(frame), number(frame + 1))
                                    : Words.of("film.cut", number(frame)));
        }
        if (cutOff) {
            words.add(Words.of("film.cut", number(timesUs.size() - 1)));
        }
        return words.stream().distinct().toList();
    }

    private String unreadWords() {
        StringJoiner runs = new StringJoiner(", ");
        List<Integer> frames = List.copyOf(unread);
        int from = 0;
        int count = 0;
        for (int i = 0; i < frames.size(); i++) {
            if (i + 1 < frames.size() && frames.get(i + 1) == frames.get(i) + 1) {
                continue;
            }
            runs.add(
                    from == i
                            ? number(frames.get(i))
                            : Words.of("film.run", number(frames.get(from)), number(frames.get(i))));
            count++;
            from = i + 1;
        }
        return Words.of(count == 1 && frames.size() == 1 ? "film.frame" : "film.frames", runs);
    }

    private String number(int frame) {
        return Integer.toString(frame - base);
    }
}
