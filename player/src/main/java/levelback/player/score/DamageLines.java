package levelback.player.score;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedSet;
import java.util.StringJoiner;
import java.util.TreeSet;
import levelback.clips.index.IndexedFrame;
import levelback.clips.open.ClipFacts.Damage;

/** Says in words which of the frames shown cannot be read, where pictures are missing, and that a recording was cut off. */
final class DamageLines {

    private final List<IndexedFrame> index;
    private final int first;
    private final int last;
    private final int base;
    private final TreeSet<Integer> unread = new TreeSet<>();
    private final TreeSet<Integer> leaning = new TreeSet<>();
    private final TreeSet<Integer> missingAfter = new TreeSet<>();
    private boolean cutOff;
    private boolean unsure;

    private DamageLines(List<IndexedFrame> index, int first, int last, int base) {
        this.index = index;
        this.first = first;
        this.last = last;
        this.base = base;
    }

    /**
     * One sentence of each kind of damage that touches the frames shown.
     *
     * @param frames every frame of the recording, in order
     * @param damage spans as the recording's facts give them; the end of a span is no longer part of it
     * @param unreadable frames that turned out to be unreadable while they were shown
     * @param first first frame shown
     * @param last last frame shown
     * @param base taken off a frame's number for the words
     */
    static List<String> of(
            List<IndexedFrame> frames,
            List<Damage> damage,
            SortedSet<Integer> unreadable,
            int first,
            int last,
            int base) {
        DamageLines lines = new DamageLines(frames, first, last, base);
        damage.forEach(lines::take);
        for (int frame : unreadable) {
            lines.unread.add(frame);
            lines.lean(frame);
        }
        return lines.words();
    }

    private void take(Damage span) {
        int frames = index.size();
        if (span.fromUs() > index.get(frames - 1).timeUs()) {
            cutOff |= last == frames - 1;
            return;
        }
        List<Integer> within = new ArrayList<>();
        int before = -1;
        for (int frame = 0; frame < frames; frame++) {
            long at = index.get(frame).timeUs();
            if (at < span.fromUs()) {
                before = frame;
            } else if (at < span.toUs() || (at == span.fromUs() && span.toUs() == span.fromUs())) {
                within.add(frame);
            }
        }
        if (span.leaning()) {
            within.stream().filter(frame -> frame >= first && frame <= last).forEach(leaning::add);
            return;
        }
        if (within.size() < frames) {
            within.forEach(this::lean);
        }
        if (within.isEmpty()) {
            if (before >= 0 && before + 1 < frames) {
                lean(before);
            }
            // The lost pictures are no frames of the recording; a gap stands between two that are.
            if (before >= first - 1 && before <= last) {
                missingAfter.add(before);
            }
        } else if (within.size() == frames) {
            unsure = true;
        } else {
            within.stream().filter(frame -> frame >= first && frame <= last).forEach(unread::add);
        }
    }

    /**
     * A key frame stands alone. Between two key frames a picture may be made from any other; from a damaged key frame, also
     * those that are shown before it.
     */
    private void lean(int lost) {
        int from = lost;
        while (from > 0 && !index.get(from - 1).keyFrame()) {
            from--;
        }
        int to = lost + 1;
        while (to < index.size() && !index.get(to).keyFrame()) {
            to++;
        }
        for (int frame = Math.max(from, first); frame < to && frame <= last; frame++) {
            if (!index.get(frame).keyFrame()) {
                leaning.add(frame);
            }
        }
    }

    private List<String> words() {
        leaning.removeAll(unread);
        String rest = leaning.isEmpty() ? Words.of("film.rest") : Words.of("film.lean", runs(leaning));

        List<String> words = new ArrayList<>();
        if (unsure) {
            words.add(Words.of("film.unsure"));
        }
        if (!unread.isEmpty()) {
            words.add(Words.of(unread.size() == 1 ? "film.frame" : "film.frames", runs(unread), rest));
        }
        if (unread.isEmpty() && missingAfter.isEmpty() && !leaning.isEmpty()) {
            words.add(Words.of("film.leanOnly", runs(leaning)));
        }
        for (int frame : missingAfter) {
            words.add(
                    frame < 0
                            ? Words.of("film.missingFirst", number(0))
                            : frame + 1 < index.size()
                                    ? Words.of("film.missing", number(frame), number(frame + 1), rest)
                                    : Words.of("film.cut", number(frame)));
        }
        if (cutOff) {
            words.add(Words.of("film.cut", number(index.size() - 1)));
        }
        return words.stream().distinct().toList();
    }

    private String runs(SortedSet<Integer> of) {
        StringJoiner runs = new StringJoiner(", ");
        List<Integer> frames = List.copyOf(of);
        int from = 0;
        for (int i = 0; i < frames.size(); i++) {
            if (i + 1 < frames.size() && frames.get(i + 1) == frames.get(i) + 1) {
                continue;
            }
            runs.add(
                    from == i
                            ? number(frames.get(i))
                            : Words.of("film.run", number(frames.get(from)), number(frames.get(i))));
            from = i + 1;
        }
        return runs.toString();
    }

    private String number(int frame) {
        return Integer.toString(frame - base);
    }
}
